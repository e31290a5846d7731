"""Levels: the reference of the dBu, and how far a level may be from what an input takes."""

from __future__ import annotations

from math import sqrt

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

ZERO_DBU_V = Fact(
    sqrt(0.6), "V", "0 dBu: 1 mW in 600 ohm, r.m.s.", "definition; IEC 60268-2 for the term, its number from memory"
)
LEAST_MARGIN_DB = Fact(3, "dB", "left between the highest peak and what an input takes", _PRACTICE)
LOW_BY_DB = Fact(12, "dB", "below what drives an input fully: from there on noise is lifted with the sound", _PRACTICE)
