"""Rework: how long a hand takes for each thing that is done to a board, and how long what is taken off is kept."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"

MINUTES = {
    "make": Fact(20, "min", "a lead is cut, both plugs fitted", _PRACTICE),
    "strip base": Fact(8, "min", "the base of a unit is cleaned and its pieces of strip are laid", _PRACTICE),
    "print": Fact(1, "min", "a label is printed", _PRACTICE),
    "power off": Fact(2, "min", "power off, mains lead out, one photograph of each side", _PRACTICE),
    "unplug": Fact(0.5, "min", "one end is pulled out and tagged", _PRACTICE),
    "pull out": Fact(3, "min", "a lead is freed from its ties and taken out", _PRACTICE),
    "take off": Fact(4, "min", "a unit is peeled or screwed off", _PRACTICE),
    "clear deck": Fact(30, "min", "all leads are freed from a deck, bundled and tagged", _PRACTICE),
    "peel base": Fact(5, "min", "old strip comes off the base of a unit, the residue with alcohol", _PRACTICE),
    "peel": Fact(5, "min", "old strip under one unit comes off the deck, the residue with alcohol", _PRACTICE),
    "set volts": Fact(2, "min", "an outlet's voltage is set and its switch taped", _PRACTICE),
    "set lift": Fact(2, "min", "a ground lift is set and its switch taped", _PRACTICE),
    "set selector": Fact(2, "min", "a mains selector is set and taped, with the supply's mains lead out", _PRACTICE),
    "put deck": Fact(10, "min", "another deck is looked over, its holes deburred, its feet put on", _PRACTICE),
    "take out": Fact(5, "min", "a jack or inlet is taken out of a panel, its hole closed", _PRACTICE),
    "close": Fact(2, "min", "a hole is closed", _PRACTICE),
    "drill": Fact(5, "min", "a hole is marked, drilled and deburred", _PRACTICE),
    "widen": Fact(5, "min", "a hole is cut wider, or two are cut into one slot", _PRACTICE),
    "drill for it": Fact(10, "min", "holes that hold a thing are marked from it, drilled and deburred", _PRACTICE),
    "set jack": Fact(10, "min", "a hole is drilled in a panel and a jack or inlet set in it", _PRACTICE),
    "strip deck": Fact(5, "min", "strip for one unit is laid on the deck", _PRACTICE),
    "refit plug": Fact(10, "min", "a plug is cut off and another is fitted", _PRACTICE),
    "fit": Fact(4, "min", "a lead is laid and tied", _PRACTICE),
    "plug in": Fact(0.5, "min", "one end is plugged in", _PRACTICE),
    "mains test": Fact(2, "min", "a competent person makes one test of a mains part, the mains lead out", _PRACTICE),
    "measure": Fact(2, "min", "mains in, voltage and polarity read at one free plug, mains out", _PRACTICE),
    "mount": Fact(3, "min", "a unit is set in its place and pressed or screwed down", _PRACTICE),
    "label": Fact(1.5, "min", "a label comes off, another goes on", _PRACTICE),
    "dress": Fact(3, "min", "a lead is laid another way and tied again", _PRACTICE),
    "enter": Fact(2, "min", "a preset, a song or a channel is entered", _PRACTICE),
    "clear": Fact(1, "min", "a preset or a song is taken out", _PRACTICE),
    "pack": Fact(1, "min", "a spare is put in its bag, or taken out", _PRACTICE),
    "test": Fact(2, "min", "one point is measured and the reading written down", _PRACTICE),
    "case": Fact(5, "min", "the board is tried in another case, with its lid shut", _PRACTICE),
    "bag": Fact(3, "min", "what was taken off is bagged and the bag marked", _PRACTICE),
}
"""By action of a step: the time of one hand that knows the board."""

KEPT_SHOWS = Fact(3, "shows", "what was taken off stays with the board for the way back", _PRACTICE)
EARLY_HOLD_MIN = Fact(20, "min", "after this a fresh strip holds about half of what it will", "from memory")
NEAR_HOLE_MM = Fact(
    15,
    "mm",
    "a lead goes through a hole that is there where that is no farther beside its own way: twice as much is its least slack",
    _PRACTICE,
)
SAME_DECK_MM = Fact(5, "mm", "a deck whose stated size differs by no more was measured again, not exchanged", _PRACTICE)
