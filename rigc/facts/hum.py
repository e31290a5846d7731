"""Hum: the field and the level that rings are judged by, and how near a lead must lie to be heard."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

FIELD_UT = Fact(1.0, "µT", "the field in which rings are compared: near a transformer", _PRACTICE)
HERTZ = Fact(50, "Hz", "mains frequency where no scenario states one", "IEC 60038 nominal values, from memory")
NOMINAL_MV = Fact(77.5, "mV", "level that hum is compared with: instrument level, −20 dBu", _PRACTICE)
LEAST_DB = Fact(-60, "dB", "hum above this, of the nominal level, is worth a warning", _PRACTICE)
BESIDE_MM = Fact(25, "mm", "a lead that near runs beside another", _PRACTICE)
BESIDE_LONG_MM = Fact(200, "mm", "from that length on a run beside another counts", _PRACTICE)
