"""Rig, leads and feeds -> per scenario: which grounds are joined, what earths them, and which rings they form."""

from __future__ import annotations

from itertools import count

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_conductors import Joins, joins
from rigc.analysis.ground.states import GroundState, GroundSystem, ground_state
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig, Scenario
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.reason import PRACTICE
from rigc.traced.units import COUNT

_Cause = tuple[tuple[tuple[str, str], ...], tuple[str, ...] | None, tuple[bool, ...]]


class GroundSystems(Record):
    """The different states of grounds, in the order of the scenarios, and how many earths each system of each has."""

    states: tuple[GroundState, ...]
    earths: tuple[tuple[Figure, ...], ...]

    def in_scenario(self, name: str) -> GroundState:
        """The state of a scenario; raises `LookupError` where there is none of that name."""
        for state in self.states:
            if name in state.scenarios:
                return state
        raise LookupError(f"no scenario '{name}'")


def ground_systems(rig: Rig, leads: Leads, power: PowerAssignment) -> GroundSystems:
    """One state for each way in which scenarios join grounds; scenarios that join them alike share it."""
    made: dict[_Cause, Joins] = {}
    alike: dict[Joins, list[str]] = {}
    for scenario in rig.scenarios.values():
        cause = _cause(rig, scenario)
        if cause not in made:
            made[cause] = joins(rig, leads, power, scenario)
        alike.setdefault(made[cause], []).append(scenario.name)
    if not alike:
        alike[joins(rig, leads, power, None)] = []
    states = tuple(ground_state(rig, joined, tuple(names)) for joined, names in alike.items())
    numbers = count(1)
    return GroundSystems(
        states,
        tuple(
            tuple(_earths(rig, f"ground-{next(numbers)}", state, each) for each in state.systems) for state in states
        ),
    )


def _earths(rig: Rig, name: str, state: GroundState, system: GroundSystem) -> Figure:
    told = {**dict.fromkeys(system.earths, "earthed"), **dict.fromkeys(system.unknown, "earth not stated")}
    things = (
        mentioned(thing, words, rig.things[thing].declared if thing in rig.things else None)
        for thing, words in told.items()
    )
    return known_figure(
        f"{name}.earths",
        found(len(system.earths), lambda: f"{' + '.join(system.earths) or 'none'} = {len(system.earths)}"),
        COUNT,
        mentioned("scenarios", ", ".join(state.scenarios) or "any"),
        *things,
        mentioned("members", ", ".join(system.members)),
        rule="earth references of grounds that are joined: exactly one is right, two make a ring through the mains",
        source=PRACTICE,
    )


def _cause(rig: Rig, scenario: Scenario) -> _Cause:
    """All that a scenario can change about grounds: lifts, amps, and the chains that are only for some scenarios."""
    own = tuple(scenario.name in each.when.scenarios for each in rig.connections if each.when.scenarios)
    return scenario.lifts, scenario.amps, own


COMPUTE = ground_systems
