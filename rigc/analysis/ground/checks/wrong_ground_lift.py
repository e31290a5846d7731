"""A ground lift stands wrong in a scenario: closed it makes a ring, open it leaves grounds without earth.

Why it matters: the right position depends on what else is plugged in; it is different with an amp, at the desk alone,
and at home.
What to do: state the other position for that scenario; the ground sheet lists all positions.
Source: common practice, no source: exactly one earth for each joined ground system.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.lift_faults import LiftFault, LiftFaults
from rigc.analysis.ground.lift_positions import LiftPosition, lift_edits, opened_in
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.model.ways.lift_jacks import lift_jacks
from rigc.source import Span

KIND = Kind(
    "wrong-ground-lift",
    Level.WARNING,
    __doc__,
    "in each scenario a ground lift neither makes a ring nor leaves grounds without earth",
    "common practice, no source",
)


def wrong_ground_lift(rig: Rig, faults: LiftFaults, leads: Leads, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each fault, with all scenarios in which it is the same; lifts of which any one would mend it are told with it, as
    alternatives. A ring through two mains earths is told by its own rule, which opens the lift in all scenarios at once; of a lift at a jack of
    which nothing says that it has one that is told, and what it does is not known."""
    alike: dict[object, list[LiftFault]] = {}
    for fault in faults.all:
        if any(lift.port.jack not in lift_jacks(rig.things[lift.port.thing]) for lift in fault.lifts):
            continue
        ring = fault.ring
        if ring is None or not ring.through_earth or ring.unsure is not None:
            alike.setdefault((fault.lifts, fault.words), []).append(fault)
    for same in alike.values():
        yield _told(rig, leads, power, same[0], [rig.scenarios[each.scenario] for each in same])


def _told(rig: Rig, leads: Leads, power: PowerAssignment, fault: LiftFault, scenarios: list[Scenario]) -> Diagnostic:
    first, scenario = fault.lifts[0], scenarios[0]
    ports, names = [lift.port for lift in fault.lifts], [each.name for each in scenarios]
    many, other = len(ports) > 1, "open" if first.position == "closed" else "closed"
    words, closes = ("ground lifts", "they close") if many else ("ground lift", "it closes")
    came = (
        ""
        if any(lift.stated for lift in fault.lifts)
        else f", as {'they leave their' if many else 'it leaves its'} maker"
    )
    return KIND.at(
        _span(rig, scenario, first),
        f"in {_scenarios(names)} the {words} at {listed(ports)} "
        f"{'are' if many else 'is'} {first.position}{came}: {fault.words.format(closes=closes)}",
        subject=(*map(str, ports), *names),
        label=f"{first.position} in this scenario" if first.stated else f"comes {first.position}",
        also=tuple(Label(_span(rig, scenario, lift), "and this") for lift in fault.lifts[1:]),
        note="to turn one of them is enough" if many else "",
        mends=tuple(dict.fromkeys(_turn(rig, leads, power, scenarios, port, other) for port in ports)),
    )


def _scenarios(names: list[str]) -> str:
    return f"scenario{'s' if len(names) > 1 else ''} {listed(names)}"


def _span(rig: Rig, scenario: Scenario, lift: LiftPosition) -> Span:
    """Where its position is stated."""
    jack = rig.jack(lift.port)
    return scenario.declared if jack is None else dict(scenario.lift_spans).get(str(lift.port), jack.span)


def _turn(rig: Rig, leads: Leads, power: PowerAssignment, scenarios: list[Scenario], port: Port, other: str) -> Mend:
    """One edit for each scenario; where it is opened, together with those that would close a ring there."""
    turned = opened_in(rig, leads, power, scenarios, port) if other == "open" else {(port,): scenarios}
    words = [
        f"{' and '.join(f'`lift {each} {other}`' for each in ports)} in {_scenarios([each.name for each in some])}"
        for ports, some in turned.items()
    ]
    edits = (edit for ports, some in turned.items() for each in some for edit in lift_edits(each, ports, other))
    return Mend(f"write {', and '.join(words)}", tuple(edits))


CHECK = wrong_ground_lift
