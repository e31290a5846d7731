"""Pulled: one line of the pull list, and how it is written as a row."""

from __future__ import annotations

from rigc.record import Record
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


class Pulled(Record):
    """So much of an item, and so much more: spares, waste. `unit` is `m`, or empty for pieces."""

    item: str
    kind: str
    unit: str
    quantity: float
    spare: float = 0.0


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
        Cell(_figure(pulled.quantity)),
        Cell(_figure(pulled.spare)),
        Cell(_figure(pulled.quantity + pulled.spare), strong=True),
        Cell(""),
    )
    return Row(cells)


def _figure(value: float) -> str:
    """Whole ones without decimals, lengths to a tenth of a millimetre."""
    return f"{value:.4f}".rstrip("0").rstrip(".") if value else ""
