"""Strips cut from rolls -> how many rolls each kind takes, what is cut from each, and what is left."""

from __future__ import annotations

from rigc.analysis.mounting.roll_use import RollUse
from rigc.diagnostics.figures import metres_cut, millimetres
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("strip"),
    Column("roll", "m", number=True),
    Column("rolls", number=True),
    Column("least that would do", number=True, key="least"),
    Column("pieces from each roll", "mm", key="pieces"),
    Column("left over", "m", number=True, key="left"),
)


def roll_table(uses: tuple[RollUse, ...]) -> Table | None:
    """A row for each kind of strip; without a stated roll the pieces are listed all the same. None if nothing is laid."""
    caption = "Roll use: every piece whole, rolls full"
    return Table("rolls", caption, _COLUMNS, tuple(map(_row, uses))) if uses else None


def _row(use: RollUse) -> Row:
    name = Cell(use.kind.name)
    plan = use.plan
    if plan is None:
        return Row((name, Cell("", mark="roll not stated"), Cell(""), Cell(""), Cell(_told(use.pieces)), Cell("")))
    too_long = f"longer than a roll: {_told(plan.too_long)}" if plan.too_long else ""
    each = "; ".join(f"roll {number}: {_told(raw)}" for number, raw in enumerate(plan.raws, 1))
    figures = (Cell(metres_cut(plan.length)), Cell(str(len(plan.raws))), Cell(str(plan.least)))
    return Row((name, *figures, Cell(each, mark=too_long), Cell(metres_cut(plan.rest))))


def _told(pieces: tuple[int, ...]) -> str:
    """Equal pieces once, with their number: `4 × 100, 95`."""
    counts: dict[int, int] = {}
    for piece in pieces:
        counts[piece] = counts.get(piece, 0) + 1
    return ", ".join(
        millimetres(size) if count == 1 else f"{count} × {millimetres(size)}" for size, count in counts.items()
    )
