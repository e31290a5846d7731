"""Weight: what one person lifts."""

from __future__ import annotations

from rigc.facts.fact import Fact

ONE_LIFTER_KG = Fact(
    23, "kg", "load constant of the lifting equation: the most that one person lifts", "NIOSH publication 94-110"
)
