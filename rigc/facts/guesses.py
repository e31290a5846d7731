"""Guesses: how near a limit a figure that was not measured is worth a warning."""

from __future__ import annotations

from rigc.facts.fact import Fact

NEAR_SHARE = Fact(
    15, "%", "distance from a limit, of the limit, within which a guess must be measured", "common practice, no source"
)
