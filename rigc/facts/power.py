"""Power: how far outlets and supplies are loaded, and how long a battery serves."""

from __future__ import annotations

from rigc.facts.fact import Fact

PRACTICE = "common practice, no source"

LOAD_SHARE = Fact(80, "%", "an outlet's load, of its rating", PRACTICE)
DIGITAL_LOAD_SHARE = Fact(65, "%", "the same where a digital unit's start-up current is unknown", PRACTICE)
TOTAL_SHARE = Fact(80, "%", "all outlets of a supply together, of its ceiling", PRACTICE)
MOST_CEILING_SHARE = Fact(
    400, "%", "a supply's ceiling, of what its outlets give together, above which one of the two is a slip", PRACTICE
)
LEAST_DRAWN_MA = Fact(0.3, "mA", "the least that a unit draws: one with a single transistor", PRACTICE)
LEAST_DRAWN_MUCH_MA = Fact(5, "mA", "the least that a digital unit or an amp draws", PRACTICE)
PARALLEL_SHARE = Fact(90, "%", "outlets in parallel, of the sum of their ratings", PRACTICE)
FAR_MM = Fact(
    10_000,
    "mm",
    "what a lead from deck to deck, or from beside the board, counts in the choice of outlets: more than any on one deck",
    PRACTICE,
)
END_LOSS_SHARE = Fact(
    1,
    "%",
    "of the outlet's voltage: a loss in the lead that counts for nothing where the outlet gives just the least that its unit takes",
    PRACTICE,
)
SHOW_H = Fact(4, "h", "time that a unit stays plugged in for one show, sound check included", PRACTICE)
