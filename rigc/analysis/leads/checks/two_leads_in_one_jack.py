"""Two leads are to be plugged into one jack.

Why it matters: a jack holds one plug; on the bench one of the leads is left over.
What to do: say which of the two it is, or put a splitter in between. Where the leads are never plugged at once, say for
which scenario (`for`) or with which instrument (`with`) each chain holds.
Source: arithmetic on the stated connections. Two outputs into one input are told as joined outputs (joined-outputs, audio) or as
tangled MIDI (tangled-midi) instead, and so is an output from which the leads part that come together there.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import crowded, joined_inputs, joins_outputs, led_astray, parted_before
from rigc.model.wishes import Connection

KIND = Kind(
    "two-leads-in-one-jack",
    Level.ERROR,
    __doc__,
    "one lead in one jack",
    "arithmetic on the stated connections",
)


def two_leads_in_one_jack(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each thing of which a jack holds more than one lead at once."""
    joined = joined_inputs(rig)
    told = {*parted_before(rig, joined), *led_astray(rig, joined)}
    found = {
        socket: leads
        for socket, leads in crowded(rig).items()
        if socket[0] not in told and not any(joins_outputs(socket, leads, signal) for signal in ("audio", "midi"))
    }
    for thing in dict.fromkeys(port.thing for port, _ in found):
        yield _told({port: leads for (port, _), leads in found.items() if port.thing == thing}, thing)


def _told(found: dict[Port, list[Connection]], thing: str) -> Diagnostic:
    parts = [f"'{port}' holds the leads {_others(port, leads)}" for port, leads in found.items()]
    places = [each for leads in found.values() for each in leads]
    splitter = "a MIDI splitter" if places[-1].signal == "midi" else "a splitter"
    return KIND.at(
        places[-1].span,
        "; ".join(parts),
        subject=(thing, *map(str, found)),
        label="plugged here",
        also=tuple(Label(each.span, "and this") for each in places[:-1] if each.span is not places[-1].span),
        help=f"say which one it is, or put {splitter} in between",
    )


def _others(port: Port, leads: list[Connection]) -> str:
    ends = dict.fromkeys(f"to {each.end}" if each.start == port else f"from {each.start}" for each in leads)
    return " and ".join(ends)


CHECK = two_leads_in_one_jack
