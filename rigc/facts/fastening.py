"""Fastening: how strips are cut, laid and judged."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

SHOCK_G = Fact(
    20,
    "g",
    "deceleration that a strip must hold: a case dropped 150 mm onto foam that gives way by 7 to 8 mm",
    "physics: a/g is about height of fall / travel",
)
PIECE_SHORTER_MM = Fact(20, "mm", "a piece is that much shorter than the unit is deep", _PRACTICE)
TAPE_SHORTER_MM = Fact(10, "mm", "a rail's tape is that much shorter than the deck is wide", _PRACTICE)
TWO_STRIPS_FROM_MM = Fact(50, "mm", "a unit that wide takes two strips", _PRACTICE)
THREE_STRIPS_FROM_MM = Fact(120, "mm", "a unit that wide takes three strips", _PRACTICE)
FOUR_STRIPS_FROM_MM = Fact(200, "mm", "a unit that wide takes four strips", _PRACTICE)
ONE_MORE_FROM_KG = Fact(1.0, "kg", "a unit that heavy takes one strip more", _PRACTICE)
ORDER_MORE = Fact(0.10, "", "share that is ordered beyond what is laid", _PRACTICE)
ORDER_STEP_MM = Fact(100, "mm", "an order is rounded up to a multiple of this", _PRACTICE)
WAIT_H = Fact(24, "h", "time before a fresh strip is loaded", "common practice; adhesive at about 90 %, from memory")
