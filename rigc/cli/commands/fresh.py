"""`rigc fresh`: are the documents beside the rigs what the sources give now?"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from rigc.cli import seam
from rigc.cli.destination import Documents, Render, Split
from rigc.cli.options import Given, disks, rig_options
from rigc.cli.screen import Screen
from rigc.output.layout import PAPERS

if TYPE_CHECKING:
    from rigc.cli.pages import Pages
    from rigc.cli.report import Report

Stale = tuple[str, Path, str, str]
"""What is the matter with a document, its path, its text now, and the text that the sources give."""


@click.command()
@click.argument("folder", required=False, default=".", metavar="[DIR]", type=click.Path(exists=True, path_type=Path))
@click.option("--diff", "as_diff", is_flag=True, help="Print what differs.")
@click.option("--paper", type=click.Choice(PAPERS), default="a4", help="The paper they were built for.")
@click.option("--templates", type=click.Path(exists=True, file_okay=False, path_type=Path), help="Your own templates.")
@rig_options
@click.pass_obj
def fresh(screen: Screen, folder: Path, as_diff: bool, paper: str, templates: Path | None, given: Given) -> int:
    """List documents under DIR that are out of date.

    Every rig with a folder `documents` beside it is looked at, in the formats that are there. Exit code 1 when one is
    stale, missing or left over; 2 when a rig gives no documents because it has errors.
    """
    from rigc.cli.pages import pages
    from rigc.cli.report import NO, NO_ANSWER, Report
    from rigc.cli.stale import stale_documents
    from rigc.edit.text_diff import text_diff
    from rigc.output.template_mistake import TemplateMistake

    report = Report(Screen(screen.colour, True, screen.verbose), given)
    found: list[Stale] = []
    silent = 0
    try:
        with pages(templates) as ours:
            for beside, rigs in _rigs(folder).items():
                made = _documents(report, rigs, given, ours, paper)
                silent += made is None
                found += [] if made is None else stale_documents(beside, made)
    except TemplateMistake as mistake:
        report.tell((mistake.finding(),))
        return NO_ANSWER
    for word, path, old, new in found:
        screen.out(text_diff(path.as_posix(), old, new) if as_diff else f"{word} {path.as_posix()}\n")
    report.compiled = False
    code = report.finish()
    if silent:
        some = (
            "rig gives no documents because of its errors"
            if silent == 1
            else "rigs give no documents because of their errors"
        )
        screen.err(f"{silent} {some}\n")
        return NO_ANSWER
    screen.progress(f"{len(found)} documents are not fresh; rigc build writes them anew\n" if found else "")
    return (NO if found else 0) if code != NO_ANSWER else code


def _rigs(folder: Path) -> dict[Path, list[Path]]:
    """The rigs by their folder, where it holds documents."""
    from rigc.cli.whole_file import rig_files

    found: dict[Path, list[Path]] = {}
    for name in rig_files((str(folder),)):
        if (Path(name).parent / "documents").is_dir():
            found.setdefault(Path(name).parent, []).append(Path(name))
    return found


def _documents(
    report: Report, rigs: list[Path], given: Given, ours: Pages, paper: str
) -> Sequence[tuple[Documents, Render, Split]] | None:
    """The documents of each file that declares a rig, and what renders them; None where one has errors."""
    from rigc.cli.rigs_below import declares_rig

    made: list[tuple[Documents, Render, Split]] = []
    for disk in disks([str(path) for path in rigs], given):
        if not declares_rig(disk):
            continue  # stock and units that rigs use
        result = report.compile(disk)
        if result is None or result.has_errors:
            return None
        made.append(
            (
                ours.documents(result, (), False),
                partial(ours.render, result=result, paper=paper),
                partial(seam.split, result=result),
            )
        )
    return made
