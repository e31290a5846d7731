"""Guesses: how near a limit a figure that was not measured is worth a warning, and how far it may be off."""

from __future__ import annotations

from rigc.facts.fact import Fact

NEAR_SHARE = Fact(
    15, "%", "distance from a limit, of the limit, within which a guess must be measured", "common practice, no source"
)
IMPEDANCE_SPREAD = Fact(30, "%", "by which a guessed impedance may be off, either way", "common practice, no source")
LEVEL_SPREAD_DB = Fact(2, "dB", "by which a guessed level or gain may be off, either way", "common practice, no source")
LATENCY_SPREAD = Fact(50, "%", "by which a guessed latency may be off, either way", "common practice, no source")
HEAT_SPREAD = Fact(30, "%", "by which a guessed heat may be off, either way", "common practice, no source")
SIZE_SPREAD_MM = Fact(5, "mm", "by which a size guessed by eye may be off, either way", "common practice, no source")
