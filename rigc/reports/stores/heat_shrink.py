"""What each cable takes and its jacket -> which heat-shrink goes over its ends, and how much of it."""

from __future__ import annotations

from rigc.analysis.stores.heat_shrink import CableShrink, HeatShrink
from rigc.diagnostics.figures import plain
from rigc.facts.bench import SHRINK_FROM_MM, SHRINK_RATIO, SHRINK_SHARE, SHRINK_TO_MM
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.term import known

_COLUMNS = (
    Column("stock"),
    Column("jacket", "mm", number=True),
    Column("inside when shrunk, below", "mm", number=True, key="shrunk"),
    Column("inside as it comes", "mm", key="supplied"),
    Column("pieces", number=True),
    Column("each", "mm"),
    Column("at most", "m", number=True),
)


def heat_shrink_table(shrink: HeatShrink) -> Table:
    """A piece for each end that is made here: it must go over the jacket as it comes, and grip it when shrunk."""
    caption = f"Heat-shrink, adhesive, {plain(SHRINK_RATIO.value)}:1 ({SHRINK_SHARE.source})"
    rows = tuple(map(_row, shrink.all))
    return Table("heat-shrink", caption, _COLUMNS, rows, empty="nothing to shrink")


def _row(shrink: CableShrink) -> Row:
    each = f"{plain(SHRINK_FROM_MM.value)} to {plain(SHRINK_TO_MM.value)}"
    return Row(
        (
            Cell(shrink.cable or ""),
            *_jacket(shrink),
            figure_cell(shrink.pieces),
            Cell(each),
            figure_cell(shrink.taken),
        )
    )


def _jacket(shrink: CableShrink) -> tuple[Cell, Cell, Cell]:
    below = known(shrink.shrunk)
    if below is None:
        return Cell("", mark="jacket not stated"), Cell(""), Cell("")
    comes = f"over {shrink.jacket.text}, below {plain(below * SHRINK_RATIO.value)}"
    return figure_cell(shrink.jacket), figure_cell(shrink.shrunk), Cell(comes)
