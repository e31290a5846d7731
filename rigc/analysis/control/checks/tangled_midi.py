"""Two senders are joined into one MIDI input, or messages run round in a ring of thru and out jacks.

Why it matters: a Y lead mixes the bytes of two senders into nonsense. In a ring a message comes back to the unit that sent
it and goes round again: programs change twice, notes hang, the chain chokes.
What to do: let two senders meet in a merger, which waits for whole messages. Take out the lead that closes the ring.
Source: MIDI 1.0: one output drives one input.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_way import MidiLink
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import crowded, joins_outputs
from rigc.model.wishes import Connection

KIND = Kind(
    "tangled-midi",
    Level.ERROR,
    __doc__,
    "one MIDI output drives one input, and no message comes back to its sender",
    "MIDI 1.0: one output drives one input",
)


def tangled_midi(rig: Rig, control: ControlMap) -> Iterator[Diagnostic]:
    """One finding for each input with several senders, and for each ring that does not close at such an input."""
    joined = {
        socket[0]: [each for each in leads if each.end == socket[0]]
        for socket, leads in crowded(rig).items()
        if joins_outputs(socket, leads, "midi")
    }
    told: list[tuple[MidiLink, ...]] = []
    for port, leads in joined.items():
        rings = [ring for ring in control.rings if any(link.end == port for link in ring)]
        told += rings
        yield _joined(port, leads, rings)
    for ring in control.rings:
        if ring not in told:
            yield _ring(ring)


def _joined(port: Port, leads: list[Connection], rings: list[tuple[MidiLink, ...]]) -> Diagnostic:
    """Where one of the senders gets its messages from the input itself, its lead is what is too much."""
    closing = next((link for ring in rings for link in ring if link.end == port), None)
    return KIND.at(
        leads[-1].span,
        f"{listed(dict.fromkeys(each.start for each in leads))} are joined into the MIDI input '{port}'",
        subject=(port.thing, str(port)),
        label="one more sender",
        also=tuple(Label(each.span, "and this") for each in leads[:-1]),
        note="; ".join(f"it also closes a ring: {_around(ring)}" for ring in rings),
        help=_without(closing) if closing else "put a MIDI merger before it; a Y lead does not merge",
    )


def _ring(ring: tuple[MidiLink, ...]) -> Diagnostic:
    return KIND.at(
        ring[-1].span,
        f"MIDI runs in a ring: {_around(ring)}",
        subject=tuple(link.start.thing for link in ring),
        label="it closes here",
        also=tuple(Label(link.span, "part of the ring") for link in ring[:-1]),
        help=_without(ring[-1]),
    )


def _around(ring: tuple[MidiLink, ...]) -> str:
    names = [link.start.thing for link in ring]
    return " -> ".join((*names, names[0]))


def _without(link: MidiLink) -> str:
    return f"take out {link.lead or 'the link'} from '{link.start}' to '{link.end}'"


CHECK = tangled_midi
