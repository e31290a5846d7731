"""Rig, leads and feeds -> per scenario: which grounds are joined, what earths them, and which rings they form."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.ground.joins import Joins, joins
from rigc.analysis.ground.states import GroundState, ground_state
from rigc.model.rig import Rig, Scenario
from rigc.record import Record

_Cause = tuple[tuple[tuple[str, str], ...], tuple[str, ...] | None, tuple[bool, ...]]


class GroundSystems(Record):
    """The different states of grounds, in the order of the scenarios."""

    states: tuple[GroundState, ...]

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
    return GroundSystems(tuple(ground_state(rig, joined, tuple(names)) for joined, names in alike.items()))


def _cause(rig: Rig, scenario: Scenario) -> _Cause:
    """All that a scenario can change about grounds: lifts, amps, and the chains that are only for some scenarios."""
    own = tuple(scenario.name in each.when.scenarios for each in rig.connections if each.when.scenarios)
    return scenario.lifts, scenario.amps, own


COMPUTE = ground_systems
