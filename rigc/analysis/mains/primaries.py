"""Scenarios and mains loads -> the primary of all that says what mains it takes, in every scenario that states its mains."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.own_intakes import on_mains
from rigc.analysis.mains.primary import Primary, Taker, primary
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.model.rig import Rig, Scenario
from rigc.record import Record
from rigc.traced.given import unstated
from rigc.traced.term import Traced


class Primaries(Record):
    """All of them, scenario by scenario: supplies in order of declaration, then amps and all else that states its mains."""

    all: tuple[Primary, ...]


def primaries(rig: Rig, loads: MainsLoads, totals: SupplyTotals) -> Primaries:
    """Supplies that feed nothing are left out, and scenarios without mains. What gives from its battery only is judged where it says what
    its charger takes."""
    return Primaries(
        tuple(
            primary(scenario, scenario.mains, thing, takes)
            for scenario in rig.scenarios.values()
            if scenario.mains is not None
            for thing, takes in _takers(rig, loads, totals, scenario)
        )
    )


def _takers(rig: Rig, loads: MainsLoads, totals: SupplyTotals, scenario: Scenario) -> Iterator[tuple[Taker, Traced]]:
    """What is plugged into the mains there, with what it takes."""
    yield from ((rig.supplies[name], load.volt_amperes) for name, load in loads.all.items())
    packs = (rig.supplies[each.supply] for each in totals.all if each.supply not in loads.all)
    for each in (*(pack for pack in packs if pack.mains), *on_mains(rig, scenario)):
        yield each, loads.own.all.get(each.name, unstated(f"what {each.name} takes"))


COMPUTE = primaries
