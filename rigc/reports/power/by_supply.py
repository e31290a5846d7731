"""SupplyTotals -> the totals of the power table."""

from __future__ import annotations

from rigc.analysis.computations.mains_loads import MainsLoads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.supply_totals import SupplyTotals
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import share, watts
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.power.cells import assumed

_COLUMNS = (
    Column("supply"),
    Column("load", "mA", number=True),
    Column("load", "W", number=True, key="load_w"),
    Column("ceiling"),
    Column("load of ceiling", "%", number=True),
    Column("heat", "W", number=True),
    Column("spare outlets", number=True),
)


def by_supply(rig: Rig, power: PowerAssignment, totals: SupplyTotals, mains: MainsLoads) -> Table:
    """A row for every supply in use."""
    rows = _total_rows(rig, power, totals, mains)
    return Table("by_supply", "Totals by supply", _COLUMNS, rows, empty="no supply is used")


def _total_rows(rig: Rig, power: PowerAssignment, totals: SupplyTotals, mains: MainsLoads) -> tuple[Row, ...]:
    rows = []
    for total in totals.all:
        loads = [load for port, load in power.loads.items() if port.thing == total.supply]
        guessed = any(assumed(rig.units[name].draws_ma) for load in loads for name in load.units)
        mark = "incomplete" if total.unknown else "assumed" if guessed else ""
        heat = mains.all[total.supply].heat_w
        rows.append(
            Row(
                (
                    Cell(total.supply),
                    Cell(f"{total.drawn_ma:g}", mark=mark),
                    Cell(watts(total.drawn_w), mark=mark),
                    Cell("?" if total.ceiling is None else f"{total.ceiling:g} {total.unit}"),
                    Cell(share(total.known_pct), mark=mark),
                    Cell("?" if heat is None else decimals(heat, 2)),
                    Cell(str(total.spare)),
                ),
            )
        )
    return tuple(rows)
