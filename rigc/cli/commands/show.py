"""`rigc show`: one sheet's tables on standard output."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from rigc.cli.commands.completion import rigs, sheets
from rigc.cli.options import Given, disks, listed, listed_sheets, rig_options
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.files.disk import Disk


@click.command()
@click.argument("sheet", required=False, shell_complete=sheets)
@click.argument("path", required=False, shell_complete=rigs)
@click.option("--to", type=click.Choice(["text", "md", "csv", "json"]), default="text", help="The format.")
@click.option("--table", default="", metavar="NAME", help="Only this table of the sheet.")
@click.option(
    "--alternatives",
    type=click.IntRange(min=1, max=7),
    metavar="N",
    help="Of places: N good layouts that differ, at most 7, each with what it is better at.",
)
@click.option(
    "--against",
    metavar="REV",
    help="Of places: keep what stood in a commit of git or in another file; tell what moves.",
)
@click.option(
    "--prove",
    type=click.FloatRange(min=0, min_open=True),
    metavar="WORK",
    help="Of places: what no layout costs less than, proved by a solver with so much work, about a second each (needs rigc[solver]).",
)
@rig_options
@click.pass_obj
def show(
    screen: Screen,
    sheet: str | None,
    path: str | None,
    to: str,
    table: str,
    alternatives: int | None,
    against: str | None,
    prove: float | None,
    given: Given,
) -> int:
    """Print one sheet as tables.

    SHEET is its name, or its code in the rig's folder (P1), and PATH the rig; without both, the sheets are listed. `places`, `fit` and `stock` exist only here, not
    as documents; `stock` without a PATH is the generic stock that comes with rigc. Tables are printed even when the rig
    has errors (exit code 1).
    """
    from rigc.cli import seam
    from rigc.cli.report import Report

    known = (*seam.sheets(), *seam.views())
    if sheet is None:
        width = max((len(name) for name, _ in known), default=0)
        screen.out("".join(f"{name:<{width}}  {title}\n" for name, title in known))
        return 0
    names = listed_sheets([sheet], [name for name, _ in known])
    if sheet == "stock" and path is None:
        screen.out(_tables(seam.shown_sheets(seam.compiled(shipped(), None), ("stock",)), to, table))
        return 0
    report = Report(screen, given)
    if report.uses_stdout:
        raise click.UsageError("standard output is for the table; give --findings a file")
    asked = [each is not None for each in (alternatives, against, prove)]
    if any(asked):
        _of_places(names, sum(asked))
    for disk in disks([path] if path else [], given):
        if any(asked):
            from rigc.cli.open_places import alternatives_shown, kept_shown, proved_shown

            found = (
                kept_shown(report, disk, against, given)
                if against is not None
                else proved_shown(report, disk, prove)
                if prove is not None
                else alternatives_shown(report, disk, alternatives or 1)
            )
            screen.out(_tables(found, to, table))
            continue
        result = report.compile(disk)
        if result is not None:
            screen.out(_tables(seam.shown_sheets(result, names), to, table))
    return report.finish()


def _of_places(names: tuple[str, ...], asked: int) -> None:
    if names != ("places",):
        raise click.UsageError("--alternatives, --against and --prove are for places")
    if asked > 1:
        raise click.UsageError(
            "--alternatives lays all anew, --against keeps what stood, --prove judges one layout: choose one"
        )


def shipped() -> Disk:
    """A rig, on no disk, that uses all of the generic stock and is nothing else."""
    from rigc.files.disk import Disk
    from rigc.loader import STOCK, STOCK_FILES

    uses = "".join(f'use "{STOCK}{name}.rig"\n' for name in STOCK_FILES)
    text = f'language 1\n{uses}rig stock "Stock" {{\n  revision A 2026-01-01\n}}\n'
    return Disk(Path("stock.rig"), given=text.encode())


def _tables(sheets: tuple[Any, ...], to: str, table: str) -> str:
    from rigc.cli import seam
    from rigc.output.formats import NotOneTable
    from rigc.reports.content import Table

    if table and sheets:
        blocks = [block for sheet in sheets for block in sheet.blocks]
        listed([table], [block.name for block in blocks if isinstance(block, Table)], "table")
    try:
        return seam.tables(sheets, to, table)
    except NotOneTable as fault:
        raise click.UsageError(f"{fault}; name one with --table") from None
