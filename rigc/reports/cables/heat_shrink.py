"""What each cable takes and its jacket -> which heat-shrink goes over its ends, and how much of it."""

from __future__ import annotations

from rigc.analysis.cables.heat_shrink import shrink_cm, shrink_pieces, shrunk_mm
from rigc.analysis.cables.reel_use import ReelUse
from rigc.diagnostics.figures import metres_with_waste, plain
from rigc.facts.bench import SHRINK_FROM_MM, SHRINK_RATIO, SHRINK_SHARE, SHRINK_TO_MM
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("stock"),
    Column("jacket", "mm", number=True),
    Column("inside when shrunk, below", "mm", number=True, key="shrunk"),
    Column("inside as it comes", "mm", key="supplied"),
    Column("pieces", number=True),
    Column("each", "mm"),
    Column("at most", "m", number=True),
)


def heat_shrink_table(rig: Rig, uses: tuple[ReelUse, ...]) -> Table:
    """A piece for each end that is made here: it must go over the jacket as it comes, and grip it when shrunk."""
    caption = f"Heat-shrink, adhesive, {plain(SHRINK_RATIO.value)}:1 ({SHRINK_SHARE.source})"
    rows = tuple(_row(rig, use) for use in uses)
    return Table("heat-shrink", caption, _COLUMNS, rows, empty="nothing to shrink")


def _row(rig: Rig, use: ReelUse) -> Row:
    cable = rig.stock.cables.get(use.cable or "")
    pieces = shrink_pieces(use)
    each = f"{plain(SHRINK_FROM_MM.value)} to {plain(SHRINK_TO_MM.value)}"
    jacket = _jacket(None if cable is None else cable.outer_mm)
    taken = Cell(metres_with_waste(shrink_cm(pieces)))
    return Row((Cell(use.cable or ""), *jacket, Cell(str(pieces)), Cell(each), taken))


def _jacket(outer: Quantity | None) -> tuple[Cell, Cell, Cell]:
    if outer is None:
        return Cell("", mark="jacket not stated"), Cell(""), Cell("")
    below = shrunk_mm(outer.value)
    mark = "assumed" if outer.assumed else ""
    comes = f"over {plain(outer.value)}, below {plain(below * SHRINK_RATIO.value)}"
    return Cell(plain(outer.value), mark=mark), Cell(plain(below), mark=mark), Cell(comes)
