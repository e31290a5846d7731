"""Numbers on how cable and inputs load what drives them, and on the level classes of jacks."""

from __future__ import annotations

from rigc.facts.fact import Fact

CABLE_LIMIT = Fact(800.0, "pF", "cable before the first active input, pickup not counted", "common practice, no source")

LEAST_BRIDGING = Fact(
    10.0,
    "",
    "an input is at least this many times the impedance of what feeds it: 0.83 dB are lost at most",
    "general reference on impedance bridging; loss by 20 log10(Zin/(Zin+Zout))",
)
TREBLE_CORNER_HZ = Fact(
    15_000.0, "Hz", "lowest treble corner 1/(2 pi R C) of a driven section", "common practice, no source"
)
TREADLE_SHARE = Fact(
    0.25,
    "",
    "highest source impedance of a potentiometer as a share of its track, at half travel",
    "physics: R/2 beside R/2",
)
LOW_TRACK_OHM = Fact(
    25_000.0, "ohm", "track of the kind of volume treadle made to follow a buffer", "common practice, no source"
)
HIGH_TRACK_OHM = Fact(
    250_000.0, "ohm", "track of the kind of volume treadle made to follow a pickup", "common practice, no source"
)
TUNER_BRANCH_PF = Fact(
    100.0, "pF", "cable on a treadle's tuner jack before the first buffer", "common practice, no source"
)
LEAST_CABLE = Fact(50.0, "pF/m", "least capacitance that is had in audio cable", "common practice, no source")
MOST_CABLE = Fact(300.0, "pF/m", "most capacitance that audio cable has", "common practice, no source")
LOW_OUTPUT_OHM = Fact(
    2000.0, "ohm", "output impedance below which a source counts as buffered", "common practice, no source"
)
BRIGHTER = Fact(
    1.25, "", "factor of the unloaded resonance from which a guitar is heard as brighter", "common practice, no source"
)

LINE_FROM = Fact(
    -14.0,
    "dBu",
    "nominal level from which a jack counts as line level: about midway between −20 dBu (instruments) and −7.8 dBu (−10 dBV)",
    "common practice, no source",
)
