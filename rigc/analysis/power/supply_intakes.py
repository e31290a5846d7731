"""SupplyTotals -> what each supply takes for what it gives, of the mains or of its battery: `mill5.takes`, `.heat`."""

from __future__ import annotations

from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.facts.mains import EFFICIENCY_PCT
from rigc.model.rig import Rig
from rigc.model.things import Supply
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import ours, stated
from rigc.traced.term import Traced, Unknown
from rigc.traced.units import WATTS

ENERGY = "physics: conservation of energy"


class SupplyIntake(Record):
    """One supply: its efficiency in percent (`usual` where it is that of its kind, not stated), what it takes and what of that stays
    inside as heat, in W."""

    efficiency: Traced
    usual: bool
    watts: AnyFigure
    heat: AnyFigure


class SupplyIntakes(Record):
    """All supplies in use by name, in order of declaration."""

    all: dict[str, SupplyIntake]


def supply_intakes(rig: Rig, totals: SupplyTotals) -> SupplyIntakes:
    """P in = P out / efficiency."""
    return SupplyIntakes({each.supply: _intake(rig.supplies[each.supply], each) for each in totals.all})


def _intake(supply: Supply, given: SupplyTotal) -> SupplyIntake:
    name, kind = supply.name, supply.technology or ""
    efficiency = stated(f"efficiency of {name}", supply.efficiency)
    usual = isinstance(efficiency, Unknown) and kind in EFFICIENCY_PCT
    if usual:
        efficiency = ours(EFFICIENCY_PCT[kind])
    watts = figure(
        f"{name}.takes",
        given.drawn_w / efficiency * 100,
        WATTS,
        rule="taken = given / efficiency",
        source=ENERGY,
        label=f"{name} takes",
    )
    heat = figure(
        f"{name}.heat",
        watts - given.drawn_w,
        WATTS,
        rule="what it takes and does not give turns to heat",
        source=ENERGY,
    )
    return SupplyIntake(efficiency, usual, watts, heat)


COMPUTE = supply_intakes
