"""Bench: reels, spare ends, heat-shrink and markers, as leads are made and labelled; holes through which plugs go."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

REEL_MM = Fact(100_000, "mm", "length of a reel of cable", _PRACTICE)
SPARE_ENDS = Fact(
    2, "", "ends of each cable that may have to be made anew: each takes the most that a plug takes in", _PRACTICE
)
SHRINK_FROM_MM = Fact(25, "mm", "least length of heat-shrink at an end", _PRACTICE)
SHRINK_TO_MM = Fact(35, "mm", "greatest length of heat-shrink at an end", _PRACTICE)
SHRINK_SHARE = Fact(0.8, "", "the shrunk inside is below this share of the jacket's diameter", _PRACTICE)
SHRINK_RATIO = Fact(2, "", "adhesive heat-shrink shrinks to one part in this", _PRACTICE)
MARKER_STEP_MM = Fact(10, "mm", "markers are cut to a multiple of this length", _PRACTICE)
MARKER_MARGIN_MM = Fact(1.5, "mm", "white edge around the text of a marker", _PRACTICE)

_METRIC = "the series of outer diameters of metric conduits, from memory"

DRILLED_MM = tuple(
    Fact(size, "mm", "a diameter for which drills and grommets are sold", _METRIC)
    for size in (16, 20, 25, 32, 40, 50, 63)
)
GROMMET_WALL_MM = Fact(2, "mm", "what a grommet takes of its hole on each side", _PRACTICE)
WEB_MM = Fact(5, "mm", "with less than this left between two holes they become one slot", _PRACTICE)
