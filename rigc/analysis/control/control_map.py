"""Rig, leads and lengths -> the control map: how MIDI reaches each unit, what runs in rings, what each preset sends."""

from __future__ import annotations

from rigc.analysis.control.midi_way import MidiLink, MidiWay, midi_links, midi_rings, midi_ways
from rigc.analysis.control.program_change import ProgramChange, preset_time, program_changes
from rigc.analysis.control.written_number import written_number
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure


class ControlMap(Record):
    """MIDI links in the order of the source, the ways they make, their rings, and the program changes by preset.

    `times` are those of the presets that send, in ms; `channels` the numbers (1 to 16) by unit.
    """

    links: tuple[MidiLink, ...]
    ways: tuple[MidiWay, ...]
    rings: tuple[tuple[MidiLink, ...], ...]
    programs: dict[int, tuple[ProgramChange, ...]]
    times: dict[int, Figure]
    channels: dict[str, Figure]

    def to(self, unit: str) -> tuple[MidiWay, ...]:
        """The ways by which messages reach a unit."""
        return tuple(way for way in self.ways if way.unit == unit)

    def heard(self, unit: str) -> frozenset[str]:
        """The units whose messages it hears."""
        return frozenset(way.source for way in self.to(unit))


def control_map(rig: Rig, leads: Leads, lengths: CableLengths) -> ControlMap:
    """Follows every MIDI connection. A unit that none reaches is switched by hand: its programs are not sent."""
    links = midi_links(rig, leads, lengths)
    reached = {link.end.thing for link in links}
    by_hand = frozenset(name for name in rig.things if name not in reached)
    programs = {preset.number: program_changes(rig, preset, by_hand) for preset in rig.presets.values()}
    times = {number: time for number, sent in programs.items() if (time := preset_time(number, sent)) is not None}
    channels = {
        each.unit: written_number(f"{each.unit}.channel", f"channel of {each.unit}", each.number, each.span)
        for each in rig.channels
    }
    return ControlMap(links, midi_ways(rig, links), midi_rings(links), programs, times, channels)


COMPUTE = control_map
