"""Foot: the room that shoes need between switches, and hands between units, by the class of a rig."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

_CAREFUL = (
    Fact(70, "mm", "switch to switch in a row, for a careful toe", _PRACTICE),
    Fact(130, "mm", "row to row of switches", _PRACTICE),
)
_BOOTS = (Fact(90, "mm", "switch to switch in a row, on stage", _PRACTICE), _CAREFUL[1])
_STAGE = (
    Fact(100, "mm", "switch to switch in a row, for stage boots", _PRACTICE),
    Fact(150, "mm", "row to row of switches, for stage boots", _PRACTICE),
)
SWITCH_SPACING_MM = {
    "home": _CAREFUL,
    "studio": _CAREFUL,
    "gigging": _BOOTS,
    "fly": _BOOTS,
    "touring": _STAGE,
}
LIFT_OUT_MM = Fact(5, "mm", "between bodies, so that a unit can be lifted out", _PRACTICE)
KNOB_MM = Fact(25, "mm", "from a knob to the middle of a switch that is stamped on", _PRACTICE)
HALF_SHOE_MM = Fact(
    60,
    "mm",
    "from the middle of a foot to the side of its shoe: half of 111 mm, the bare foot of all but 5 of 100 men, and of 10 mm of shoe",
    "ANSUR II public data (US Army 2012, NATICK/TR-15/007); of the shoe MIL-STD-1472, from memory",
)
STAMP_N = Fact(800, "N", "a foot with the player's weight on it", _PRACTICE)
WARM_W = Fact(5, "W", "a unit of pedal size that takes so much may get warm to the hand", _PRACTICE)
VENT_MM = Fact(15, "mm", "free air before a vent", _PRACTICE)
