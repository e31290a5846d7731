"""Strips cut from rolls -> how many rolls each kind takes, what is cut from each, and what is left."""

from __future__ import annotations

from rigc.analysis.mounting.roll_uses import RollUse, RollUses
from rigc.diagnostics.figures import millimetres
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.worst_first import worst_first

_COLUMNS = (
    Column("strip"),
    Column("roll", "m", number=True),
    Column("rolls", number=True),
    Column("least that would do", number=True, key="least"),
    Column("pieces from each roll", "mm", key="pieces"),
    Column("left over", "m", number=True, key="left"),
)


def roll_table(uses: RollUses) -> Table | None:
    """A row for each kind of strip; without a stated roll the pieces are listed all the same. None if nothing is laid."""
    caption = "Roll use: every piece whole, rolls full"
    return Table("rolls", caption, _COLUMNS, worst_first(map(_row, uses.all))) if uses.all else None


def _row(use: RollUse) -> Row:
    name = Cell(use.kind.name)
    cut = use.cut
    if cut is None:
        return Row((name, Cell("", mark="roll not stated"), Cell(""), Cell(""), Cell(_told(use.pieces)), Cell("")))
    plan = cut.plan
    too_long = f"longer than a roll: {_told(plan.too_long)}" if plan.too_long else ""
    each = "; ".join(f"roll {number}: {_told(raw)}" for number, raw in enumerate(plan.raws, 1))
    figures = (figure_cell(cut.roll), figure_cell(cut.rolls), figure_cell(cut.least))
    return Row((name, *figures, Cell(each, mark=too_long), figure_cell(cut.left)))


def _told(pieces: tuple[int, ...]) -> str:
    """Equal pieces once, with their number: `4 × 100, 95`."""
    counts: dict[int, int] = {}
    for piece in pieces:
        counts[piece] = counts.get(piece, 0) + 1
    return ", ".join(
        millimetres(size) if count == 1 else f"{count} × {millimetres(size)}" for size, count in counts.items()
    )
