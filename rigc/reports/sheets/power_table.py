"""PowerAssignment and totals -> the power table: by outlet, by supply, by unit."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.supply_totals import SupplyTotals
from rigc.analysis.power.power_tap import outlet_at
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet, Table
from rigc.reports.power.by_outlet import by_outlet
from rigc.reports.power.by_supply import by_supply
from rigc.reports.power.by_unit import by_unit
from rigc.reports.power.cautions import POWER_CAUTIONS


def power_table(rig: Rig, power: PowerAssignment, totals: SupplyTotals, leads: Leads) -> Sheet:
    """The sheet; what is not known is left as `?`, a figure that leans on an assumed current is marked."""
    blocks: tuple[Table | Paragraph, ...] = (
        by_outlet(rig, power, leads),
        by_supply(rig, power, totals),
        by_unit(rig, power, leads),
        *_notes(rig, power),
        *POWER_CAUTIONS,
    )
    return Sheet("power-table", "Power table", "tech", blocks, landscape=True)


def _notes(rig: Rig, power: PowerAssignment) -> tuple[Paragraph, ...]:
    turned = [feed.unit for feed in power.feeds if feed.reversed]
    joined = [feed for feed in power.feeds if feed.how in ("series", "parallel")]
    lines = [f"{name}: reversing lead; mark both of its ends." for name in turned]
    lines += [f"{feed.unit}: {feed.how} lead; only as the supply's maker allows, labelled as such." for feed in joined]
    lines += [
        f"{port}: leaves its maker at {outlet.ratings[0].volts.value:g} V; set it to {load.volts:g} V and tape the switch."
        for port, load in power.loads.items()
        if load.units and (outlet := outlet_at(rig, port)) is not None and outlet.ratings[0].volts.value != load.volts
    ]
    return (Paragraph("settings", tuple(lines), heading="Before plugging in"),) if lines else ()


SHEET = power_table
