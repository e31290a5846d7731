"""Pulled -> the table of the pull list."""

from __future__ import annotations

from rigc.analysis.pulling.pulled import Pulled, figure
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("item"),
    Column("kind"),
    Column("in"),
    Column("quantity", number=True),
    Column("+ spare", number=True, key="spare"),
    Column("total", number=True),
    Column("bin (to write in)", key="bin"),
)


def pull_table(pulled: tuple[Pulled, ...]) -> Table:
    """A row for each item, with room to write where it lies, to be ticked off."""
    return Table(
        "pull-list", "What to hand out", _COLUMNS, tuple(map(_row, pulled)), empty="nothing to hand out", tick=True
    )


def _row(pulled: Pulled) -> Row:
    cells = (
        Cell(pulled.item),
        Cell(pulled.kind),
        Cell(pulled.unit or "pieces"),
        Cell(figure(pulled.quantity)),
        Cell(figure(pulled.spare)),
        Cell(figure(pulled.quantity + pulled.spare), strong=True),
        Cell(""),
    )
    return Row(cells)
