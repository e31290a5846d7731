"""A ground lift stands wrong in a scenario: closed it makes a ring, open it leaves grounds without earth.

Why it matters: the right position depends on what else is plugged in; it is different with an amp, at the desk alone,
and at home.
What to do: state the other position for that scenario; the ground sheet lists all positions.
Source: common practice, no source: exactly one earth for each joined ground system.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_conductors import joins
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.lift_positions import LiftPosition, lift_edits, lift_positions, opened_together
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.states import GroundState, GroundSystem, ground_state
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.model.ways.ground_link import GROUND
from rigc.source import Span

KIND = Kind(
    "wrong-ground-lift",
    Level.WARNING,
    __doc__,
    "in each scenario a ground lift neither makes a ring nor leaves grounds without earth",
    "common practice, no source",
)


def wrong_ground_lift(rig: Rig, grounds: GroundSystems, leads: Leads, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each fault of a scenario; lifts of which any one would mend it are told with it, as alternatives."""
    for scenario in rig.scenarios.values():
        state = grounds.in_scenario(scenario.name)
        faults: dict[tuple[str, str], list[LiftPosition]] = {}
        for lift in lift_positions(rig, scenario):
            if lift.position == "unknown":
                continue
            at, other = str(lift.port), _other(lift.position)
            turned = scenario.replace(lifts=(*(each for each in scenario.lifts if each[0] != at), (at, other)))
            then = ground_state(rig, joins(rig, leads, power, turned), state.scenarios)
            fault = _ring(state, lift.port) if lift.position == "closed" else _float(rig, state, then)
            if fault:
                faults.setdefault((lift.position, fault), []).append(lift)
        for fault_of, lifts in faults.items():
            yield _told(rig, leads, power, scenario, lifts, *fault_of)


def _other(position: str) -> str:
    return "open" if position == "closed" else "closed"


def _told(
    rig: Rig,
    leads: Leads,
    power: PowerAssignment,
    scenario: Scenario,
    lifts: list[LiftPosition],
    position: str,
    fault: str,
) -> Diagnostic:
    ports, first = [lift.port for lift in lifts], lifts[0]
    words, closes = ("ground lifts", "they close") if len(ports) > 1 else ("ground lift", "it closes")
    came = "" if any(lift.stated for lift in lifts) else ", as it leaves its maker"
    return KIND.at(
        _span(rig, scenario, first),
        f"in scenario '{scenario.name}' the {words} at {listed(ports)} "
        f"{'is' if len(ports) == 1 else 'are'} {position}{came}: {fault.format(closes=closes)}",
        subject=(*map(str, ports), scenario.name),
        label=f"{position} in this scenario" if first.stated else f"comes {position}",
        also=tuple(Label(_span(rig, scenario, lift), "and this") for lift in lifts[1:]),
        note="to turn one of them is enough" if len(ports) > 1 else "",
        mends=tuple(dict.fromkeys(_turn(rig, leads, power, scenario, port, _other(position)) for port in ports)),
    )


def _span(rig: Rig, scenario: Scenario, lift: LiftPosition) -> Span:
    """Where its position is stated."""
    jack = rig.jack(lift.port)
    return scenario.declared if jack is None else dict(scenario.lift_spans).get(str(lift.port), jack.span)


def _turn(rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario, port: Port, other: str) -> Mend:
    ports = opened_together(rig, leads, power, scenario, port) if other == "open" else [port]
    lines = " and ".join(f"`lift {each} {other}`" for each in ports)
    return Mend(f"write {lines} in scenario '{scenario.name}'", lift_edits(scenario, ports, other))


def _ring(state: GroundState, port: Port) -> str:
    rings = (ring for ring in state.rings if ring.matters and any(port in link.lifts for link in ring.links))
    ring = next(rings, None)
    return f"{{closes}} a ring, {ring_words(ring)}" if ring is not None else ""


def _float(rig: Rig, now: GroundState, then: GroundState) -> str:
    """What has no earth now and would have one with the lift closed; where an earth is not known, floating-ground asks for it."""
    certain = [system for system in now.systems if not system.unknown]
    still_bare = set(_without_earth(rig, then.systems))
    who = [name for name in _without_earth(rig, certain) if name not in still_bare]
    return f"{listed(who)} {'has' if len(who) == 1 else 'have'} no earth" if who else ""


def _without_earth(rig: Rig, systems: Iterable[GroundSystem]) -> list[str]:
    bare = [system for system in systems if not system.earths]
    return [thing for system in bare for thing, part in system.poles if part == GROUND and thing in rig.units]


CHECK = wrong_ground_lift
