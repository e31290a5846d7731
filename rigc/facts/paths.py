"""Numbers on rows of units and on paths that run side by side."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

ROW_OF_TRUE_BYPASS = Fact(6, "units", "with true bypass in a row without a buffer", _PRACTICE)
PASSIVE_SPLIT = Fact(2, "inputs", "that one output feeds with nothing active between", _PRACTICE)
LATENCY_APART_MS = Fact(0.5, "ms", "between paths that join again: the first null then lies at 1 kHz", _PRACTICE)
LATENCY_PLAYED_MS = Fact(20, "ms", "from the string to the amp, beyond which playing feels late", _PRACTICE)
LOWEST_NOTE_HZ = Fact(
    440 * 2 ** (-29 / 12),
    "Hz",
    "the low E of a guitar, 29 semitones of equal temperament below A = 440 Hz",
    "ISO 16 for A = 440 Hz, from memory; arithmetic on it",
)
