"""A ground lift stands wrong in a scenario: closed it makes a ring, open it leaves grounds without earth.

Why it matters: the right position depends on what else is plugged in; it is different with an amp, at the desk alone,
and at home.
What to do: state the other position for that scenario; the ground sheet lists all positions.
Source: common practice, no source: exactly one earth for each joined ground system.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.computations.ground_systems import GroundSystems
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.ground.joins import joins
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.states import GroundState, GroundSystem, ground_state
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.ground_link import GROUND
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario

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
        faults: dict[tuple[str, str], list[Port]] = {}
        for at, position in scenario.lifts:
            port = Port(*at.split(".", 1))
            other = _other(position)
            turned = scenario.replace(lifts=(*(each for each in scenario.lifts if each[0] != at), (at, other)))
            then = ground_state(rig, joins(rig, leads, power, turned), state.scenarios)
            fault = _ring(state, port) if position == "closed" else _float(rig, state, then)
            if fault:
                faults.setdefault((position, fault), []).append(port)
        for (position, fault), ports in faults.items():
            yield _told(scenario, ports, position, fault)


def _other(position: str) -> str:
    return "open" if position == "closed" else "closed"


def _told(scenario: Scenario, ports: list[Port], position: str, fault: str) -> Diagnostic:
    stated, other = dict(scenario.lift_spans), _other(position)
    lifts, closes = ("ground lifts", "they close") if len(ports) > 1 else ("ground lift", "it closes")
    return KIND.at(
        stated[str(ports[0])],
        f"in scenario '{scenario.name}' the {lifts} at {listed(ports)} "
        f"{'is' if len(ports) == 1 else 'are'} {position}: {fault.format(closes=closes)}",
        subject=(*map(str, ports), scenario.name),
        label=f"{position} in this scenario",
        also=tuple(Label(stated[str(port)], "and this") for port in ports[1:]),
        note="to turn one of them is enough" if len(ports) > 1 else "",
        mends=tuple(
            Mend(
                f"write `lift {port} {other}` in scenario '{scenario.name}'",
                (Replace(stated[str(port)], other),),
            )
            for port in ports
        ),
    )


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
