"""Numbers on how cable loads a pickup, and on the level classes of jacks."""

from __future__ import annotations

from rigc.facts.fact import Fact

CABLE_LIMIT = Fact(800.0, "pF", "cable before the first active input, pickup not counted", "common practice, no source")

LINE_FROM = Fact(
    -14.0,
    "dBu",
    "nominal level from which a jack counts as line level: about midway between −20 dBu (instruments) and −7.8 dBu (−10 dBV)",
    "common practice, no source",
)
