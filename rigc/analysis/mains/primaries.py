"""Scenarios and mains loads -> every supply's primary in every scenario that states its mains."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primary import Primary, primary
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Supply, Unit
from rigc.record import Record
from rigc.traced.given import unstated
from rigc.traced.term import Traced


class Primaries(Record):
    """All of them, scenario by scenario: supplies in order of declaration, then amps, desks and listeners that state their mains."""

    all: tuple[Primary, ...]


def primaries(rig: Rig, loads: MainsLoads) -> Primaries:
    """Supplies that feed nothing are left out, and scenarios without mains. What an amp takes is not known."""
    return Primaries(
        tuple(
            primary(scenario, scenario.mains, thing, takes)
            for scenario in rig.scenarios.values()
            if scenario.mains is not None
            for thing, takes in _takers(rig, loads, scenario)
        )
    )


def _takers(rig: Rig, loads: MainsLoads, scenario: Scenario) -> Iterator[tuple[Supply | Unit, Traced]]:
    """What is plugged into the mains there, with what it takes."""
    yield from ((rig.supplies[name], load.volt_amperes) for name, load in loads.all.items())
    yield from ((each, unstated(f"what {each.name} takes")) for each in on_mains(rig, scenario))


def on_mains(rig: Rig, scenario: Scenario) -> tuple[Unit, ...]:
    """The amps, desks and listeners in use there that state what mains they take."""
    used = rig.units if scenario.amps is None else scenario.amps
    return tuple(rig.units[name] for name in used if rig.units[name].mains and not rig.units[name].on_battery)


COMPUTE = primaries
