"""A closed ground lift and a scenario -> all lifts that must be opened with it, so that no ring closes along another way instead."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.ground.joins import joins
from rigc.analysis.ground.lift_positions import lifts_beside
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.states import ground_state
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario


def opened_together(rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario, port: Port) -> list[Port]:
    """This lift first. Where a ring that was not told before closes without it and has no further lift, it is left at those so far."""
    before = frozenset(_rings(rig, leads, power, scenario))
    ports = lifts_beside(rig, leads, scenario, port)
    while True:
        said = dict(scenario.lifts) | {str(each): "open" for each in ports}
        rings = _rings(rig, leads, power, scenario.replace(lifts=tuple(said.items())))
        come = [ring for ring in rings if ring.matters and ring.unsure is None and ring not in before]
        on_them = (each for ring in come for link in ring.links for each in (*link.isolators, *link.lifts))
        further = next((each for each in on_them if each not in ports), None)
        if further is None:
            return ports
        ports += [each for each in lifts_beside(rig, leads, scenario, further) if each not in ports]


def _rings(rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario) -> tuple[Ring, ...]:
    return tuple(ground_state(rig, joins(rig, leads, power, scenario), (scenario.name,)).rings)
