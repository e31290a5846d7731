"""`rigc build`: check rigs, then write their documents, all or none."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import Any

import click

from rigc.cli.destination import FORMS, ON_REQUEST, Destination, Documents, Render, Split, Text
from rigc.cli.held import Held, held, held_in
from rigc.cli.options import Given, listed, listed_sheets, rig_options
from rigc.cli.screen import Screen
from rigc.output.layout import PAPERS

TO_HELP = (
    "Only this format. Repeatable. Without it html, of separate files md and svg too. csv has a file for each table, json one for the tables of each "
    "sheet, dxf one for each deck."
)


@click.command()
@click.argument("paths", nargs=-1, metavar="[PATH]...")
@click.option("-o", "--output", metavar="DIR|FILE|-", help="Where to (default: documents/ beside the rig).")
@click.option("--separate", is_flag=True, help="A file for each sheet and drawing instead of one for the whole folder.")
@click.option("--sheet", "sheets", multiple=True, metavar="NAME,...", help="Only these sheets, by name or code (P1).")
@click.option("--to", "forms", multiple=True, metavar="|".join((*FORMS, *ON_REQUEST)), help=TO_HELP)
@click.option("--paper", type=click.Choice(PAPERS), default="a4", help="The paper of the printed pages.")
@click.option("--templates", type=click.Path(exists=True, file_okay=False, path_type=Path), help="Your own templates.")
@click.option("--draft", is_flag=True, help="Write in spite of errors; every page is marked DRAFT.")
@click.option("--replace", is_flag=True, help="Write over the documents of another revision, or of another rig.")
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
    given: Given,
) -> int:
    """Check rigs and write their documents.

    All sheets go into one HTML file, folder.html, behind a front page; sheets that are named go into files of their own.
    Nothing is written if one of them has errors, or if the folder holds another revision or another rig. PATH may be a
    folder: all rigs below it.
    """
    from rigc.cli import seam
    from rigc.cli.pages import pages
    from rigc.cli.report import Report
    from rigc.cli.rigs_below import rig_disks
    from rigc.output.extras.missing_extra import MissingExtra
    from rigc.output.template_mistake import TemplateMistake

    report = Report(screen, given)
    rigs = rig_disks(paths, given)
    target = Destination(
        output,
        listed(forms, (*FORMS, *ON_REQUEST), "format") if forms else (),
        len(rigs),
        separate=separate or bool(sheets),
    )
    if target.is_stdout and report.uses_stdout:
        raise click.UsageError("standard output is for the documents; give --findings a file")
    try:
        with pages(templates) as ours:
            names = listed_sheets(sheets, ours.sheet_names) if sheets else ()
            results = [report.compile(disk) for disk in rigs]
            if all(result and (draft or not result.has_errors) for result in results):
                made = [
                    (
                        Path(disk.typed_folder),
                        ours.documents(result, names, draft),
                        partial(ours.render, result=result, paper=paper),
                        partial(seam.split, result=result),
                    )
                    for disk, result in zip(rigs, results, strict=True)
                ]
                _put(screen, target, made, replace)
            else:
                unless = "" if draft or report.unreadable else "; --draft writes in spite of errors"
                screen.err(f"nothing was written{unless}\n")
    except (TemplateMistake, MissingExtra) as fault:
        report.tell((fault.finding(),))
        screen.err("nothing was written\n")
    return report.finish()


def _put(
    screen: Screen, target: Destination, made: Sequence[tuple[Path, Documents, Render, Split]], replace: bool
) -> None:
    texts = _texts(target, made)
    others = (
        {} if target.is_stdout else _others(target, texts, [document for _, some, _, _ in made for document in some])
    )
    if others and not replace:
        raise click.ClickException(_refused(others))
    _write(screen, target, texts)
    _left(screen, {path: each for path, each in others.items() if path not in texts})


def _texts(target: Destination, made: Sequence[tuple[Path, Documents, Render, Split]]) -> dict[Path, Text]:
    texts: dict[Path, Text] = {}
    for folder, documents, render, split in made:
        for path, text in target.texts(folder, documents, render, split).items():
            if path in texts:
                raise click.UsageError(f"two rigs would both write '{path}'; build each with an -o of its own")
            texts[path] = text
    return texts


def _others(target: Destination, texts: dict[Path, Text], documents: list[Any]) -> dict[Path, Held]:
    """What stands where these texts go, or in their folder, and is of another revision or another rig."""
    mine = {Held(document.title.code, document.title.revision) for document in documents}
    found = {path: each for path in texts if (each := held(path)) is not None}
    for folder in set() if target.is_file else {path.parent for path in texts}:
        found |= held_in(folder)
    return {path: each for path, each in found.items() if each not in mine}


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
        f"{len(texts)} files{where}, {len(changed)} of them changed\n" if texts else f"nothing was written{where}\n"
    )
