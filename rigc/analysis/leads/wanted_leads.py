"""Connections, feeds and stated leads -> the pairs of jacks that need a lead, each with what the source says of it."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_plugs import socket
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.things import ENDS, Instrument, Outlet
from rigc.model.wishes import LeadFacts
from rigc.record import Record
from rigc.source import Span


class Wanted(Record):
    """Two jacks to be joined; `shared` is the outlet of a Y lead of which this is one leg."""

    signal: str
    start: Port
    end: Port
    stereo: bool
    facts: LeadFacts | None
    shared: Port | None
    span: Span


class _Stated:
    """The stated leads by their two jacks, whichever way round; each is taken once."""

    def __init__(self, facts: tuple[LeadFacts, ...]) -> None:
        self._left: dict[frozenset[Port], list[LeadFacts]] = {}
        for lead in facts:
            self._left.setdefault(frozenset((lead.start, lead.end)), []).append(lead)

    def take(self, start: Port, end: Port) -> LeadFacts | None:
        """The next stated lead between two jacks."""
        waiting = self._left.get(frozenset((start, end)))
        return waiting.pop(0) if waiting else None

    def rest(self) -> list[LeadFacts]:
        """Those that no connection and no feed has taken."""
        return [lead for waiting in self._left.values() for lead in waiting]


def wanted_leads(rig: Rig, power: PowerAssignment) -> tuple[Wanted, ...]:
    """One for each pair of jacks, connections first, in the order of the source. A wireless link needs no lead."""
    stated = _Stated(rig.lead_wishes.leads)
    return (*_connected(rig, stated), *_fed(rig, power, stated), *_others(rig, stated))


def is_stage(rig: Rig, port: Port) -> bool:
    """Whether a jack is off the board: on an instrument, on an amp or desk that has no place, or on what is said to stand there."""
    thing = rig.things[port.thing]
    off = port.thing in rig.off_board or (thing.kind in ENDS and port.thing not in rig.places)
    return off or isinstance(thing, Instrument)


def _connected(rig: Rig, stated: _Stated) -> list[Wanted]:
    wanted: dict[tuple[Port, Port], Wanted] = {}
    for link in rig.connections:
        pair = (link.start, link.end)
        if pair in wanted or _wireless(rig, link.start) or _wireless(rig, link.end):
            continue
        wanted[pair] = _want(link.signal, *pair, stated.take(*pair), link.span, stereo=link.stereo)
    return list(wanted.values())


def _fed(rig: Rig, power: PowerAssignment, stated: _Stated) -> list[Wanted]:
    """Units that share an outlet get the legs of one Y lead; a unit on two outlets gets a lead from each."""
    sharing: dict[Port, int] = {}
    for feed in power.feeds:
        for outlet in feed.outlets:
            sharing[outlet] = sharing.get(outlet, 0) + 1
    wanted: list[Wanted] = []
    for feed in power.feeds:
        inlet = rig.units[feed.unit].inlet
        if inlet is None:
            continue
        for outlet in feed.outlets:
            pair = (outlet, Port(feed.unit, inlet.name))
            shared = outlet if sharing[outlet] > 1 else None
            wanted.append(_want(feed.current or "dc", *pair, stated.take(*pair), feed.span, shared=shared))
    return wanted


def _others(rig: Rig, stated: _Stated) -> list[Wanted]:
    return [_want(_signal(rig, lead), lead.start, lead.end, lead, lead.span) for lead in stated.rest()]


def _want(
    signal: str,
    start: Port,
    end: Port,
    facts: LeadFacts | None,
    span: Span,
    stereo: bool = False,
    shared: Port | None = None,
) -> Wanted:
    if facts is not None:
        start, end, span = facts.start, facts.end, facts.span
    return Wanted(signal, start, end, stereo, facts, shared, span)


def _wireless(rig: Rig, port: Port) -> bool:
    jack = socket(rig, port)
    return isinstance(jack, Jack) and jack.connector.kind == "wireless"


def _signal(rig: Rig, lead: LeadFacts) -> str:
    """What a lead carries that only the leads block names, told by its jacks."""
    ends = [socket(rig, port) for port in (lead.start, lead.end)]
    roles = {end.role for end in ends if isinstance(end, Jack)}
    outlet = next((end for end in ends if isinstance(end, Outlet)), None)
    if outlet is not None:
        return outlet.ratings[0].current if outlet.ratings else "dc"
    if "inlet" in roles:
        return "mains"
    if "usb" in roles:
        return "usb"
    if any(role.startswith("midi") for role in roles):
        return "midi"
    return "control" if any(role.startswith(("expression", "control")) for role in roles) else "audio"
