"""Options that several commands share, and the checks of what is given for them."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Sequence
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

import click

from rigc.diagnostics.near import nearest

if TYPE_CHECKING:
    from rigc.files.disk import Disk

Command = Callable[..., Any]

LEVELS = ("error", "warning", "remark", "cant-check")
FORMS = ("text", "short", "jsonl", "sarif", "github")


class Given(NamedTuple):
    """How rigs are read and judged, and where findings go, as given on the command line."""

    root: Path | None
    stdin_name: str
    on: str | None
    findings: tuple[tuple[str, str], ...]
    fail_on: str
    effort: int | None = None


def rig_options(command: Command) -> Command:
    """Add the options of `Given`; the command gets them as its parameter `given`."""

    @wraps(command)
    def bundled(*arguments: Any, **named: Any) -> Any:
        given = Given(*(named.pop(field) for field in Given._fields))
        return command(*arguments, given=given, **named)

    for option in (
        click.option("--root", type=_FOLDER, help=ROOT_HELP),
        click.option("--stdin-name", default="stdin.rig", metavar="PATH", help=STDIN_HELP),
        click.option("--on", metavar="DATE", callback=_day, help="Take this date as today, for example 2026-12-31."),
        click.option("--findings", multiple=True, metavar="FMT[=FILE]", callback=_findings, help=_FINDINGS_HELP),
        click.option(
            "--fail-on",
            type=click.Choice(LEVELS),
            default="error",
            help="Exit with 1 from this level of finding upwards.",
        ),
        click.option("--effort", type=click.IntRange(min=0), metavar="N", help=EFFORT_HELP),
    ):
        bundled = option(bundled)
    return bundled


def disks(paths: Sequence[str], given: Given) -> list[Disk]:
    """A loader for each path; `-` is standard input; without a path, the only .rig file of the current folder."""
    if paths.count("-") > 1:
        raise click.UsageError("standard input can be read only once")
    return [_disk(path, given) for path in paths or [_only_rig()]]


def listed(values: Iterable[str], known: Iterable[str], what: str) -> tuple[str, ...]:
    """The names in comma lists, each once and each known."""
    names = dict.fromkeys(name.strip() for value in values for name in value.split(","))
    for name in names:
        if name not in (known := tuple(known)):
            near = nearest(name, known)
            advice = f"did you mean '{near}'?" if near else f"there are {', '.join(known)}"
            raise click.UsageError(f"no {what} '{name}'; {advice}")
    return tuple(names)


def listed_sheets(values: Iterable[str], known: Iterable[str]) -> tuple[str, ...]:
    """The names and codes of sheets in comma lists; whether a rig has a sheet of some code is known when its folder is made."""
    from rigc.reports.front.sheet_codes import is_code

    names = tuple(dict.fromkeys(name.strip() for value in values for name in value.split(",")))
    coded = tuple(name for name in names if is_code(name))
    return (*listed((name for name in names if name not in coded), known, "sheet"), *coded)


_FOLDER = click.Path(exists=True, file_okay=False, path_type=Path)
ROOT_HELP = "The folder whose files `use` may name (default: the nearest one upwards with .git or a file rig-root)."
STDIN_HELP = "Name to show for standard input."
EFFORT_HELP = (
    "How hard to search for places that you left open, in steps; more than by default is never worse. "
    "Default: 600 for one thing, 20,000 to 90,000 for many, and up to three times as many while something is in the way."
)
_FINDINGS_HELP = f"Print findings as {', '.join(FORMS)}; =FILE writes them to a file. Repeatable."


def _day(ctx: click.Context, _option: click.Parameter, value: str | None) -> str | None:
    from datetime import date

    try:
        if value is None or date.fromisoformat(value).isoformat() == value:
            return value
    except ValueError:
        pass
    raise click.UsageError(f"'{value}' is no date; write it as 2026-12-31", ctx)


def _findings(ctx: click.Context, _option: click.Parameter, values: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Pairs of format and file; a file `-` is standard output, an empty one the format's usual stream."""
    pairs = [value.partition("=") for value in values]
    for form, equals, file in pairs:
        listed([form], FORMS, "format of findings")
        if equals and not file:
            raise click.UsageError(f"--findings {form}= names no file", ctx)
        if form == "sarif" and [other for _, _, other in pairs].count(file) > 1 and file:
            raise click.UsageError(f"'{file}' can't hold sarif and more; name a file for each", ctx)
    return tuple((form, file) for form, _, file in pairs)


def _disk(path: str, given: Given) -> Disk:
    from rigc.files.disk import Disk
    from rigc.files.reading import SIZE_LIMIT

    if path == "-":
        return Disk(Path(given.stdin_name), given.root, sys.stdin.buffer.read(SIZE_LIMIT + 1))
    return Disk(Path(path), given.root)


def _only_rig() -> str:
    found = sorted(path.name for path in Path().glob("*.rig"))
    if len(found) != 1:
        number = f"{len(found)} .rig files" if found else "no .rig file"
        raise click.UsageError(f"name a rig: this folder holds {number}")
    return found[0]
