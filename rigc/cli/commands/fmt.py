"""`rigc fmt`: rigs in canonical text."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.options import STDIN_HELP, Given, disks
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.cli.report import Report
    from rigc.files.disk import Disk


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", shell_complete=rigs)
@click.option("--check", is_flag=True, help="Write nothing; exit code 1 if a file is not canonical.")
@click.option("--diff", "as_diff", is_flag=True, help="Write nothing; print what would change.")
@click.option("--stdin-name", default="stdin.rig", metavar="PATH", help=STDIN_HELP)
@click.pass_obj
def fmt(screen: Screen, paths: tuple[str, ...], check: bool, as_diff: bool, stdin_name: str) -> int:
    """Rewrite rigs in canonical text.

    Statements, their order and all comments stay. PATH may be a folder: all rigs below it; `-` formats standard input
    to standard output. A file that cannot be read whole is left alone, with its findings and exit code 2.
    """
    from rigc.cli.report import NO, Report, save
    from rigc.cli.whole_file import rig_files

    given = Given(None, stdin_name, None, (), "error")
    report = Report(screen, given)
    rigs = disks(rig_files(paths), given) if paths else disks((), given)
    changed = _formatted(screen, report, rigs, check, as_diff)
    if not check and not as_diff:
        files = {path: both for path, both in changed.items() if path is not None}
        save({path: text for path, (text, _) in files.items()}, {path: held for path, (_, held) in files.items()})
        screen.progress("".join(f"wrote {path.as_posix()}\n" for path in changed if path is not None))
    if check:
        screen.err(
            "".join(f"not canonical: {'standard input' if path is None else path.as_posix()}\n" for path in changed)
        )
    return report.finish() or (NO if changed and check else 0)


def _formatted(
    screen: Screen, report: Report, rigs: list[Disk], check: bool, as_diff: bool
) -> dict[Path | None, tuple[str, bytes]]:
    """The canonical texts of those files that are not canonical, with what these hold; standard input, which has no path, is printed."""
    from rigc.cli.whole_file import whole_file
    from rigc.edit.canonical import canonical
    from rigc.edit.text_diff import text_diff

    changed: dict[Path | None, tuple[str, bytes]] = {}
    for disk in rigs:
        read = whole_file(report, disk)
        if read is None:
            continue
        source, file = read
        name, text = disk.shown(disk.name), canonical(file)
        if disk.is_given and not check and not as_diff:
            screen.out(text)
        if text.encode("utf-8") == source.data:
            continue
        changed[None if disk.is_given else disk.typed] = (text, source.data)
        if as_diff:
            screen.out(text_diff(name, source.text, text))
    return changed
