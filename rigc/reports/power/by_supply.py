"""SupplyTotals -> the totals of the power table."""

from __future__ import annotations

from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.power.supply_intakes import SupplyIntakes
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.worst_first import worst_first

_COLUMNS = (
    Column("supply"),
    Column("load", "mA", number=True),
    Column("load", "W", number=True, key="load_w"),
    Column("ceiling"),
    Column("load of ceiling", "%", number=True, bar=True),
    Column("heat", "W", number=True),
    Column("spare outlets", number=True),
)


def by_supply(totals: SupplyTotals, intakes: SupplyIntakes, fuses: Fuses) -> Table:
    """A row for every supply in use; with its fuse where one of them states it."""
    rows = _total_rows(totals, intakes)
    columns: tuple[Column, ...] = _COLUMNS
    if any(fuses.of(total.supply) for total in totals.all):
        columns = (*columns, Column("fuse", folds="fuse {}"))
        told = (Cell("; ".join(fuses.of(total.supply))) for total in totals.all)
        rows = tuple(row.replace(cells=(*row.cells, cell)) for row, cell in zip(rows, told, strict=True))
    return Table("by_supply", "Totals by supply", columns, worst_first(rows), empty="no supply is used")


def _total_rows(totals: SupplyTotals, intakes: SupplyIntakes) -> tuple[Row, ...]:
    return tuple(
        Row(
            (
                Cell(total.supply),
                figure_cell(total.drawn_ma),
                figure_cell(total.drawn_w),
                figure_cell(total.most, with_unit=True),
                figure_cell(total.share),
                figure_cell(intakes.all[total.supply].heat),
                figure_cell(total.spare),
            ),
        )
        for total in totals.all
    )
