"""MIDI: times, ranges and limits of the wire."""

from __future__ import annotations

from rigc.facts.fact import Fact

_STANDARD = "MIDI 1.0, IEC 63035:2017 cl. 4.1"

BYTE_US = Fact(320, "µs", "one byte on the wire: ten bits at 31.25 kBd", _STANDARD)
PROGRAM_CHANGE = Fact(0xC0, "", "status byte of a program change on channel 1; one program number follows", "MIDI 1.0")
PROGRAM_CHANGE_BYTES = Fact(2, "bytes", "a program change: status, program number", "MIDI 1.0")
CONTROL_CHANGE_BYTES = Fact(3, "bytes", "a control change: status, controller, value", "MIDI 1.0")
CHANNELS = Fact(16, "", "channels of one chain, counted from 1 on paper and from 0 on the wire", "MIDI 1.0")
HIGHEST_PROGRAM = Fact(127, "", "highest program number on the wire", "MIDI 1.0")
LONGEST_MM = Fact(15_000, "mm", "longest lead from one jack to the next (50 ft)", "MIDI 1.0 electrical specification")
MOST_THRUS = Fact(
    3, "", "thru stages in a row: each optical input skews the edges a little", "common practice, no source"
)
