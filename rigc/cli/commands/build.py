"""`rigc build`: check rigs, then write their documents, all or none."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli.commands.completion import rigs
from rigc.cli.commands.completion import sheets as offered
from rigc.cli.destination import FOLDER, FORMS, ON_REQUEST, Destination, Text
from rigc.cli.held import Held, held, held_in
from rigc.cli.options import Given, listed, listed_sheets, rig_options
from rigc.cli.screen import Screen
from rigc.output.layout import PAPERS

if TYPE_CHECKING:
    from rigc.cli.made import Asked, Made
    from rigc.cli.pages import Pages
    from rigc.cli.report import Report
    from rigc.files.disk import Disk

TO_HELP = (
    "Only this format. Repeatable. Without it html, of separate files md and svg too. csv has a file for each table, json and xlsx one for the tables "
    "of each sheet, dxf one for each deck."
)

DEPS_HELP = "Also write which documents hang on which files, as rules that make and ninja read."


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...", shell_complete=rigs)
@click.option("-o", "--output", metavar="DIR|FILE|-", help="Where to (default: documents/ beside the rig).")
@click.option("--separate", is_flag=True, help="A file for each sheet and drawing instead of one for the whole folder.")
@click.option(
    "--sheet",
    "sheets",
    multiple=True,
    shell_complete=offered,
    metavar="NAME,...",
    help="Only these sheets, by name or code (P1).",
)
@click.option("--to", "forms", multiple=True, metavar="|".join((*FORMS, *ON_REQUEST)), help=TO_HELP)
@click.option("--paper", type=click.Choice(PAPERS), default="a4", help="The paper of the printed pages.")
@click.option("--templates", type=click.Path(exists=True, file_okay=False, path_type=Path), help="Your own templates.")
@click.option("--draft", is_flag=True, help="Mark every page DRAFT, and write in spite of errors.")
@click.option("--replace", is_flag=True, help="Write over the documents of another revision, or of another rig.")
@click.option("--watch", is_flag=True, help="Go on: build again what a saved file changes, until Ctrl-C.")
@click.option("--jobs", type=click.IntRange(min=1), default=1, metavar="N", help="Build so many rigs at once.")
@click.option("--deps", type=click.Path(dir_okay=False, path_type=Path), metavar="FILE", help=DEPS_HELP)
@rig_options
@click.pass_obj
def build(
    screen: Screen,
    paths: tuple[str, ...],
    output: str | None,
    separate: bool,
    sheets: tuple[str, ...],
    forms: tuple[str, ...],
    paper: str,
    templates: Path | None,
    draft: bool,
    replace: bool,
    watch: bool,
    jobs: int,
    deps: Path | None,
    given: Given,
) -> int:
    """Check rigs and write their documents.

    All sheets go into one HTML file, folder.html, behind a front page; sheets that are named go into files of their own.
    Nothing is written if one of them has errors, or if the folder holds another revision or another rig. PATH may be a
    folder: all rigs below it.
    """
    from rigc.cli.made import Asked
    from rigc.cli.pages import pages
    from rigc.cli.report import Report
    from rigc.cli.rigs_below import rig_disks
    from rigc.output.template_mistake import TemplateMistake

    rigs = rig_disks(paths, given)
    target = Destination(
        output,
        listed(forms, (*FORMS, *ON_REQUEST), "format") if forms else (),
        len(rigs),
        separate=separate or bool(sheets),
    )
    if target.is_stdout and Report(screen, given).uses_stdout:
        raise click.UsageError("standard output is for the documents; give --findings a file")
    if watch and (target.is_stdout or any(disk.is_given for disk in rigs)):
        raise click.UsageError("--watch is for files, not for standard input or output")

    def once(report: Report, some: Sequence[Disk]) -> Sequence[Disk]:
        try:
            with pages(templates) as ours:
                names = listed_sheets(sheets, ours.sheet_names) if sheets else ()
                asked = Asked(screen, given, target, names, templates, paper, draft)
                return _build(asked, report, ours, some, jobs, deps, replace)
        except TemplateMistake as fault:
            report.tell((fault.finding(),))
            screen.err("nothing was written\n")
        return some

    def told(some: Sequence[Disk]) -> Sequence[Disk]:
        report = Report(screen, given)
        read = once(report, some)
        report.finish()
        return read

    if watch:
        from rigc.cli.watching import watching

        watching(screen, rigs, lambda: rig_disks(paths, given), templates, told)
    report = Report(screen, given)
    once(report, rigs)
    return report.finish()


def _build(
    asked: Asked, report: Report, ours: Pages, rigs: Sequence[Disk], jobs: int, deps: Path | None, replace: bool
) -> Sequence[Disk]:
    """Builds the rigs and gives them as they were read, which may have been in another process."""
    from rigc.cli.made import each_made
    from rigc.cli.report import save

    screen = asked.screen
    made = []
    for each in each_made(asked, ours, rigs, jobs):
        made.append(each)
        if each.unread:
            report.unreadable_file(each.disk, each.unread)
            continue
        report.told(each.disk, each.findings)
        if each.fault:
            report.tell((each.fault,))
    read = [each.disk for each in made]
    if any(each.texts is None for each in made):
        plain = asked.draft or report.unreadable or any(each.fault for each in made)
        screen.err(f"nothing was written{'' if plain else '; --draft writes in spite of errors'}\n")
        return read
    _put(asked, made, replace)
    if deps is not None:
        from rigc.cli.depfile import depfile

        save({deps: depfile(made, asked.templates)})
    return read


def _put(asked: Asked, made: Sequence[Made], replace: bool) -> None:
    screen, target, texts = asked.screen, asked.target, _texts(made)
    mine = frozenset().union(*(each.marks for each in made))
    there = {} if target.is_stdout else _there(target, texts)
    others = {path: each for path, each in there.items() if each not in mine}
    if others and not replace:
        raise click.ClickException(_refused(others))
    _write(screen, target, texts)
    _left(screen, {path: each for path, each in others.items() if path not in texts})
    if target.separate and not target.is_file and not asked.sheets:
        _gone(screen, [path for path in there if path not in texts and path not in others and _is_sheet(path, target)])


def _texts(made: Sequence[Made]) -> dict[Path, Text]:
    texts: dict[Path, Text] = {}
    for path, text in (item for each in made for item in (each.texts or {}).items()):
        if path in texts:
            raise click.UsageError(f"two rigs would both write '{path}'; build each with an -o of its own")
        texts[path] = text
    return texts


def _there(target: Destination, texts: dict[Path, Text]) -> dict[Path, Held]:
    """The documents that stand where these texts go, or in their folder."""
    found = {path: each for path in texts if (each := held(path)) is not None}
    for folder in set() if target.is_file else {path.parent for path in texts}:
        found |= held_in(folder)
    return found


def _is_sheet(path: Path, target: Destination) -> bool:
    return path.suffix[1:] in target.forms and path.stem != FOLDER


def _refused(others: dict[Path, Held]) -> str:
    path, other = next(iter(others.items()))
    return f"'{path.as_posix()}' is of {other}; nothing was written (--replace writes over it, -o DIR keeps both)"


def _left(screen: Screen, others: dict[Path, Held]) -> None:
    """Tells what was not written over, so that no sheet of another revision goes unseen into the binder."""
    for other in dict.fromkeys(others.values()):
        paths = [path for path, each in others.items() if each == other]
        folder = paths[0].parent.as_posix()
        what = f"'{paths[0].name}'" if len(paths) == 1 else f"{len(paths)} documents"
        screen.err(f"{what} of {other} {'is' if len(paths) == 1 else 'are'} still in {folder}\n")


def _gone(screen: Screen, paths: list[Path]) -> None:
    """Tells sheets of an earlier build that the rig no longer has: nobody builds them anew."""
    for folder in dict.fromkeys(path.parent for path in paths):
        names = ", ".join(f"'{path.name}'" for path in paths if path.parent == folder)
        screen.err(
            f"of an earlier build, and not made now: {names} in {folder.as_posix()}; delete what the rig no longer has\n"
        )


def _write(screen: Screen, target: Destination, texts: dict[Path, Text]) -> None:
    if target.is_stdout:
        for text in texts.values():
            screen.out(text)
        return
    from rigc.cli.report import save

    changed = save(texts)
    if screen.verbose:
        screen.err("".join(f"{'wrote' if path in changed else 'unchanged'} {path.as_posix()}\n" for path in texts))
    folders = ", ".join(dict.fromkeys(path.parent.as_posix() for path in texts))
    none = "these sheets have no drawings" if target.forms == ("svg",) else "this much is no rig yet"
    where = f" in {folders}" if folders else f": {none}"
    screen.progress(
        f"{len(texts)} file{'' if len(texts) == 1 else 's'}{where}, {len(changed)} of them changed\n"
        if texts
        else f"nothing was written{where}\n"
    )
