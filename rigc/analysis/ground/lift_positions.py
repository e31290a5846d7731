"""Rig and a scenario -> how each ground lift stands there, which stand side by side, and the edits that set them together."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_conductors import joins
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.states import ground_state
from rigc.analysis.leads.leads import Lead, Leads
from rigc.diagnostics.mend import AddTo, Replace
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.record import Record


class LiftPosition(Record):
    """A lift and its `position`: open, closed, or unknown. `new` is the one in which it leaves its maker, empty where the thing
    does not say that it has one; `stated` whether the scenario says it."""

    port: Port
    position: str
    new: str
    stated: bool


def lift_positions(rig: Rig, scenario: Scenario | None) -> tuple[LiftPosition, ...]:
    """The lifts that the scenario names, in its order, then those that it leaves as they are."""
    own = {Port(thing.name, jack.name): jack.lift for thing in rig.things.values() for jack in thing.jacks if jack.lift}
    said = {Port(*at.split(".", 1)): position for at, position in scenario.lifts} if scenario is not None else {}
    named = [LiftPosition(port, position, own.get(port, ""), True) for port, position in said.items()]
    return (*named, *(LiftPosition(port, new, new, False) for port, new in own.items() if port not in said))


def lifts_beside(rig: Rig, leads: Leads, scenario: Scenario | None, port: Port) -> list[Port]:
    """This lift and the others of its thing that are not open and whose leads go to the same thing: the second side of a stereo
    way closes a ring as well as the first."""
    beyond = {_far(lead, port) for lead in leads.at(port)}
    others = [each.port for each in lift_positions(rig, scenario) if each.position != "open" and each.port != port]
    mine = [each for each in others if each.thing == port.thing]
    return [port, *(each for each in mine if beyond & {_far(lead, each) for lead in leads.at(each)})]


def lift_edits(scenario: Scenario, ports: Iterable[Port], position: str) -> tuple[Replace | AddTo, ...]:
    """The edits that set these lifts so in a scenario."""
    stated = dict(scenario.lift_spans)
    return tuple(
        AddTo("scenario", scenario.name, f"lift {port} {position}") if span is None else Replace(span, position)
        for port, span in ((port, stated.get(str(port))) for port in ports)
    )


def _far(lead: Lead, port: Port) -> str:
    return lead.end.thing if lead.start == port else lead.start.thing


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


def opened_in(
    rig: Rig, leads: Leads, power: PowerAssignment, scenarios: Iterable[Scenario], port: Port
) -> dict[tuple[Port, ...], list[Scenario]]:
    """The lifts that are opened together with this one, and the scenarios in which it is these: each has its own amps, chains and lifts."""
    found: dict[tuple[Port, ...], list[Scenario]] = {}
    for each in scenarios:
        found.setdefault(tuple(opened_together(rig, leads, power, each, port)), []).append(each)
    return found


def _rings(rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario) -> tuple[Ring, ...]:
    return tuple(ground_state(rig, joins(rig, leads, power, scenario), (scenario.name,)).rings)
