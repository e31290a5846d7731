"""MIDI: the master, and the channel of each unit."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.model.rig import Rig


def midi(rig: Rig) -> Iterator[Aspect]:
    """A channel and from where its programs count."""
    if rig.midi_master is not None:
        yield Aspect("MIDI master", "rig", "", rig.midi_master, rig.midi_master, DESIGN)
    for channel in rig.channels:
        first = "" if channel.first is None else f", programs from {channel.first}"
        text = f"{channel.number}{first}{', shared on purpose' if channel.deliberate else ''}"
        yield Aspect("MIDI channel", channel.unit, "", text, text, DESIGN, span=channel.span)


ASPECTS = midi
