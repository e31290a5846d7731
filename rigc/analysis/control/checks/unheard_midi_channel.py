"""A unit has a MIDI channel, and neither a MIDI lead nor a USB lead comes to it.

Why it matters: no program and no clock reaches it; at the first preset it stays where it was.
What to do: write the lead that comes to it in the midi block, or delete its channel.
Source: arithmetic on the stated leads.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.unheard_channels import midi_joined, unheard_channels
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import AddTo, Delete, Mend
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Channel

KIND = Kind(
    "unheard-midi-channel",
    Level.WARNING,
    __doc__,
    "a MIDI or USB lead comes to each unit that has a channel",
    "arithmetic on the stated leads",
)


_HEARING = ("midi in", "midi out", "midi thru", "usb")


def unheard_midi_channel(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such unit."""
    for channel in unheard_channels(rig):
        yield _told(rig, channel)


def _told(rig: Rig, channel: Channel) -> Diagnostic:
    name = channel.unit
    if not any(jack.role in _HEARING for jack in rig.things[name].jacks):
        return _deaf(channel)
    ends = [jack.name for jack in rig.things[name].jacks if jack.role == "midi in"]
    end = f"{name}.{ends[0]}" if ends else f"{name}.___"
    sender = _free_output(rig)
    lead = f"{sender or '___'} -> {end}"
    edits = (Mend(f"write `{lead}` in the midi block", (AddTo("midi", "", lead),)),) if sender and ends else ()
    return KIND.at(
        channel.span,
        f"'{name}' has MIDI channel {channel.number}, and no MIDI lead comes to it",
        subject=(name,),
        label="nothing is sent to it",
        mends=edits,
        otherwise=f"write in the midi block the lead that comes to it: `{lead}`"
        if sender or rig.midi_master is None
        else f"no MIDI output or thru is free: put a MIDI splitter behind '{rig.midi_master}', and write its leads in the midi block",
    )


def _deaf(channel: Channel) -> Diagnostic:
    """A channel of a unit without a jack by which it could be reached."""
    name = channel.unit
    return KIND.at(
        channel.span,
        f"'{name}' has MIDI channel {channel.number}, and no MIDI or USB jack",
        subject=(name,),
        label="it can hear nothing",
        mends=(Mend("delete this line", (Delete(channel.span),)),),
        help="name the unit that is meant, or declare its jack: midi in midi din",
    )


def _free_output(rig: Rig) -> Port | None:
    """A MIDI output that no lead leaves: of the master, else of what a lead joins with it, such as a thru."""
    taken = {each.start for each in rig.connections}
    names = (rig.midi_master, *(name for name in rig.units if name in midi_joined(rig) and name != rig.midi_master))
    outputs = (
        Port(name, jack.name)
        for name in names
        if name in rig.things
        for jack in rig.things[name].jacks
        if jack.role == "midi thru" or (jack.role == "midi out" and name == rig.midi_master)
    )
    return next((port for port in outputs if port not in taken), None)


CHECK = unheard_midi_channel
