"""Grounds and the positions of ground lifts -> the lifts that stand wrong in a scenario: one that is closed makes a ring, one that is open
leaves grounds without an earth that they would have."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_conductors import joins
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.lift_positions import LiftPosition, lift_positions
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.states import GroundState, GroundSystem, ground_state
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.model.ways.ground_link import GROUND
from rigc.record import Record


class LiftFault(Record):
    """One fault of a scenario, and the lifts of which any one would mend it. `words` tell it, with `{closes}` for the lifts; `ring` is
    what closed lifts close, `bare` the units that open ones leave without earth."""

    scenario: str
    lifts: tuple[LiftPosition, ...]
    words: str
    ring: Ring | None
    bare: tuple[str, ...]


class LiftFaults(Record):
    """All of them, by scenario."""

    all: tuple[LiftFault, ...]

    def bare_in(self, scenarios: Iterable[str]) -> set[str]:
        """The units that an open lift leaves without earth in one of these scenarios."""
        return {name for fault in self.all if fault.scenario in {*scenarios} for name in fault.bare}


def lift_faults(rig: Rig, grounds: GroundSystems, leads: Leads, power: PowerAssignment) -> LiftFaults:
    """Each lift of which the position is known, turned over by itself."""
    found: list[LiftFault] = []
    for scenario in rig.scenarios.values():
        state = grounds.in_scenario(scenario.name)
        faults: dict[tuple[str, str], LiftFault] = {}
        for lift in lift_positions(rig, scenario):
            fault = _fault(rig, leads, power, scenario, state, lift)
            if fault is not None:
                key = (lift.position, fault.words)
                before = faults.get(key)
                faults[key] = fault if before is None else before.replace(lifts=(*before.lifts, lift))
        found += faults.values()
    return LiftFaults(tuple(found))


def _fault(
    rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario, state: GroundState, lift: LiftPosition
) -> LiftFault | None:
    if lift.position == "unknown":
        return None
    if lift.position == "closed":
        ring = _ring(state, lift.port)
        words = "" if ring is None else f"{{closes}} a ring, {ring_words(ring)}"
        return LiftFault(scenario.name, (lift,), words, ring, ()) if words else None
    at = str(lift.port)
    closed = scenario.replace(lifts=(*(each for each in scenario.lifts if each[0] != at), (at, "closed")))
    bare = _bare(rig, state, ground_state(rig, joins(rig, leads, power, closed), state.scenarios))
    words = f"{listed(bare)} {'has' if len(bare) == 1 else 'have'} no earth"
    return LiftFault(scenario.name, (lift,), words, None, bare) if bare else None


def _ring(state: GroundState, port: Port) -> Ring | None:
    rings = (ring for ring in state.rings if ring.matters and any(port in link.lifts for link in ring.links))
    return next(rings, None)


def _bare(rig: Rig, now: GroundState, then: GroundState) -> tuple[str, ...]:
    """What has no earth now and would have one with the lift closed; where an earth is not known, floating-ground asks for it."""
    certain = [system for system in now.systems if not system.unknown]
    still_bare = set(_without_earth(rig, then.systems))
    return tuple(name for name in _without_earth(rig, certain) if name not in still_bare)


def _without_earth(rig: Rig, systems: Iterable[GroundSystem]) -> list[str]:
    bare = [system for system in systems if not system.earths]
    return [thing for system in bare for thing, part in system.poles if part == GROUND and thing in rig.units]


COMPUTE = lift_faults
