"""Pulled -> the table of the pull list."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.stores.pull_list import PullList
from rigc.analysis.stores.pulled import Pulled
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell

_COLUMNS = (
    Column("item"),
    Column("kind"),
    ZONE,
    Column("in"),
    Column("quantity", number=True),
    Column("+ spare", number=True, key="spare"),
    Column("total", number=True),
    Column("bin (to write in)", key="bin", least_mm=24),
)


def pull_table(pulled: PullList, zones: Zones) -> Table:
    """A row for each item, with room to write where it lies, to be ticked off."""
    rows = tuple(_row(each, zones) for each in pulled.all)
    return zoned(Table("pull-list", "What to hand out", _COLUMNS, rows, empty="nothing to hand out", tick=True))


def _row(pulled: Pulled, zones: Zones) -> Row:
    cells = (
        Cell(pulled.item),
        Cell(pulled.kind),
        Cell(zones.all(pulled.at)),
        Cell(pulled.unit or "pieces"),
        figure_cell(pulled.quantity, lacking=""),
        figure_cell(pulled.spare, lacking=""),
        figure_cell(pulled.total, strong=True, lacking=""),
        Cell(""),
    )
    return Row(cells)
