"""Rig -> which leads are plugged into each jack at once."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Panel
from rigc.model.ways.reached import reached
from rigc.model.wishes import Connection, LoopUse

Socket = tuple[Port, str]
"""A port and its face: `in` or `out` where a panel jack has two, else empty."""


def crowded(rig: Rig) -> dict[Socket, list[Connection]]:
    """The jacks that hold more than one lead at once, with those leads in the order of the source.

    A connection that several chains name is one lead; what is carried without a lead is none. The leads of a unit that
    is held by several loops are left out: that is a mistake of its own.
    """
    named = Counter(port for each in rig.connections for port in (each.start, each.end))
    several = {port for port, count in named.items() if count > 1}  # mostly none
    if not several:
        return {}
    held = in_several_loops(rig)
    plugged: dict[Socket, dict[tuple[Port, Port], list[Connection]]] = {}
    for each in rig.connections:
        for port, face in ((each.start, "out"), (each.end, "in")):
            if port in several and port.thing not in held and not _wireless(rig, port):
                socket = (port, face if isinstance(rig.things[port.thing], Panel) else "")
                plugged.setdefault(socket, {}).setdefault((each.start, each.end), []).append(each)
    found = {socket: _at_once(leads.values()) for socket, leads in plugged.items()}
    return {socket: leads for socket, leads in found.items() if leads}


def with_audio(rig: Rig) -> frozenset[Port]:
    """The jacks to which the chains bring sound, or from which they take it, in any scenario."""
    return frozenset(port for each in rig.connections if each.signal == "audio" for port in (each.start, each.end))


def in_several_loops(rig: Rig) -> dict[str, list[LoopUse]]:
    """The things that more than one loop holds, with those loops."""
    held: dict[str, list[LoopUse]] = {}
    for use in rig.loops:
        for name in dict.fromkeys(stop.thing for stop in use.stops):
            held.setdefault(name, []).append(use)
    return {name: uses for name, uses in held.items() if len(uses) > 1}


def joins_outputs(socket: Socket, leads: Iterable[Connection], signal: str = "audio") -> bool:
    """Whether the leads bring several outputs of that signal into one input."""
    ports = {each.start for each in leads if each.end == socket[0] and each.signal == signal}
    return len(ports) > 1


def joined_inputs(rig: Rig) -> dict[Port, list[Connection]]:
    """The inputs, or panel jacks, into which several outputs of audio are brought, with all leads that they hold."""
    return {socket[0]: leads for socket, leads in crowded(rig).items() if joins_outputs(socket, leads)}


def parted_before(rig: Rig, joined: Iterable[Port]) -> dict[Port, Port]:
    """The outputs that hold several leads which all come together again in one of these inputs, with that input: two chains that
    were meant as one of two, or as a splitter and a mixer."""
    found: dict[Port, Port] = {}
    onward: dict[str, set[str]] = {}
    for each in rig.connections:
        onward.setdefault(each.start.thing, set()).add(each.end.thing)
    several = {socket[0]: leads for socket, leads in crowded(rig).items() if all(e.start == socket[0] for e in leads)}
    for end in joined:
        for start, leads in several.items():
            if all(each.signal == "audio" and end.thing in reached(onward, [each.end.thing]) for each in leads):
                found.setdefault(start, end)
    return found


def led_astray(rig: Rig, joined: Mapping[Port, Iterable[Connection]]) -> dict[Port, Port]:
    """The outputs that hold two leads of which one ends in an input where outputs are joined, with that input: without that lead both
    are as they should be."""
    found = {}
    for (port, _), leads in crowded(rig).items():
        ends = dict.fromkeys(each.end for each in leads if each.start == port)
        astray = [end for end in ends if end in joined]
        if len(ends) == 2 and len(astray) == 1:
            found[port] = astray[0]
    return found


def _at_once(leads: Iterable[list[Connection]]) -> list[Connection]:
    groups = list(leads)
    return [
        each
        for group in groups
        for each in group
        if any(each.when.meets(other.when) for others in groups if others is not group for other in others)
    ]


def _wireless(rig: Rig, port: Port) -> bool:
    jack = rig.jack(port)
    return jack is not None and jack.connector.kind == "wireless"
