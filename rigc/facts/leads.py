"""Leads: the slack, floor, rounding and allowances that turn a route into a length to cut."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

LEAST_SLACK_MM = {
    signal: Fact(30 if signal == "audio" else 40, "mm", f"least slack of a lead: {signal}", _PRACTICE)
    for signal in ("audio", "dc", "midi", "control", "usb", "ac", "mains")
}
SLACK_SHARE = Fact(0.1, "", "slack as a share of the route, where that is more than the least", _PRACTICE)
ROUNDED_TO_MM = Fact(10, "mm", "a finished length is rounded up to the next multiple", _PRACTICE)
SHORTEST_MM = Fact(
    90, "mm", "shortest lead of 5 mm cable: two tails of 10 and half a turn of 20 radius are 83", "geometry: 20 + 20π"
)
SHORTEST_STAGE_MM = Fact(
    300, "mm", "a lead that leaves the board is no shorter: it hangs over the edge and down to the floor", _PRACTICE
)
PASSAGE_MM = Fact(10, "mm", "each end of a run under the deck adds this below it", _PRACTICE)
ONE_ROW_MM = Fact(5, "mm", "front edges that are no further apart stand in one row", _PRACTICE)
LONGEST_SHARE = Fact(1.1, "", "a lead that exists may be this share of its route long, and a bit", _PRACTICE)
LONGEST_MORE_MM = Fact(150, "mm", "and this much more, before the rest becomes a coil", _PRACTICE)
WASTE_SHARE = Fact(0.05, "", "waste of cable when leads are cut", _PRACTICE)
EXPRESSION_POLES = Fact(
    3, "", "conductors of an expression lead: supply, wiper, return", "physics: a divider has three ends"
)
