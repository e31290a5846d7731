"""MIDI channels and leads -> the channels of units to which no lead comes."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.wishes import Channel


def midi_joined(rig: Rig) -> set[str]:
    """The things that a MIDI or USB lead joins with another."""
    return {port.thing for each in rig.connections if each.signal in ("midi", "usb") for port in (each.start, each.end)}


def unheard_channels(rig: Rig) -> list[Channel]:
    """Those of units that no such lead joins; who sends programs to others needs none that comes to it."""
    joined = midi_joined(rig)
    return [each for each in rig.channels if each.unit not in joined and each.unit != rig.midi_master]
