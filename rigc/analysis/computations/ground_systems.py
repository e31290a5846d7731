"""Rig, leads and feeds -> per scenario: which grounds are joined, what earths them, and which rings they form."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.ground.joins import Joins, joins
from rigc.analysis.ground.states import GroundState, ground_state
from rigc.model.rig import Rig
from rigc.record import Record


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
    alike: dict[Joins, list[str]] = {}
    for scenario in rig.scenarios.values():
        alike.setdefault(joins(rig, leads, power, scenario), []).append(scenario.name)
    if not alike:
        alike[joins(rig, leads, power, None)] = []
    return GroundSystems(tuple(ground_state(rig, joined, tuple(names)) for joined, names in alike.items()))


COMPUTE = ground_systems
