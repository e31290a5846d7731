"""Separation: how far leads of unlike classes keep apart, how they cross, and how far coils keep from a transformer."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

BESIDE_DC_MM = Fact(25, "mm", "an audio lead nearer than this to a d.c. lead runs beside it", _PRACTICE)
BESIDE_AC_MM = Fact(50, "mm", "an audio lead nearer than this to an a.c. lead runs beside it", _PRACTICE)
LONG_MM = Fact(200, "mm", "an audio lead may run beside a d.c. lead for so long", _PRACTICE)
LEAST_ANGLE_DEG = Fact(60, "deg", "leads of unlike classes cross at this angle or more", _PRACTICE)
COIL_MM = Fact(150, "mm", "from a coil that hears magnetic fields to a linear transformer", _PRACTICE)
LANE_STEPS = Fact(
    4,
    "",
    "without a stated lane, lanes are tried in so many steps between a lead's two ends",
    "a choice of our own, no source",
)
"""More steps find little more and cost time."""
WAYS_PAST = Fact(
    30, "", "so many equally short ways past what hangs below the deck are compared", "a choice of our own, no source"
)
EXACT_LEADS = Fact(
    10,
    "",
    "up to so many leads that concern each other, the best ways are found for certain",
    "a choice of our own, no source",
)
BUNDLE_APART_MM = Fact(10, "mm", "leads of one class that near can be laced together", _PRACTICE)
BUNDLE_LONG_MM = Fact(80, "mm", "runs side by side of that length or more get a wrap", _PRACTICE)
