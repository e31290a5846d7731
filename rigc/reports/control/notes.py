"""What the MIDI and control map says besides its tables: the time on the wire, free channels."""

from __future__ import annotations

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_channel import free_channels, in_runs
from rigc.analysis.control.program_change import wire_ms
from rigc.facts.midi import BYTE_US, CONTROL_CHANGE_BYTES, LONGEST_MM, MOST_THRUS, PROGRAM_CHANGE_BYTES
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph
from rigc.traced.units import MILLISECONDS_WIRE


def timing(rig: Rig, control: ControlMap) -> Paragraph:
    """Free channels, what a message takes, and what the presets take."""
    lines = [f"Free channels: {in_runs(free_channels(rig)) or 'none'}."]
    lines.append(
        f"One byte takes {BYTE_US.value:g} µs on the wire: a program change {_ms(PROGRAM_CHANGE_BYTES.value)} ms, "
        f"a control change {_ms(CONTROL_CHANGE_BYTES.value)} ms ({BYTE_US.source})."
    )
    longest = max(control.times.values(), default=None)
    if longest:
        unknown = any(
            each.channel is not None and not each.octets for sent in control.programs.values() for each in sent
        )
        least = "at least " if unknown else ""
        lines.append(
            f"The longest preset change takes {least}{longest.text} ms: all its messages, one after the other."
        )
    lines.append(
        f"At most {MOST_THRUS.value:g} thru stages in a row ({MOST_THRUS.source}), at most {LONGEST_MM.value / 1000:g} m "
        f"from jack to jack ({LONGEST_MM.source})."
    )
    return Paragraph("midi_timing", tuple(lines), heading="MIDI in figures")


def _ms(octets: float) -> str:
    return MILLISECONDS_WIRE.text(wire_ms(octets, BYTE_US.value))
