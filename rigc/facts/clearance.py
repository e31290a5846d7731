"""Clearance: the room that plugs, lids and undersides need."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

PLUG_GAP_MM = Fact(2, "mm", "air between two plugs, or between a plug and what stands before it", _PRACTICE)
LID_FOAM_MM = Fact(10, "mm", "foam between the tallest unit and the lid", _PRACTICE)
UNDERSIDE_MM = Fact(
    15, "mm", "under the deck: 10 for leads and 5 for what is not flat, beyond the item itself", _PRACTICE
)
