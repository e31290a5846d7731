"""Laying: what the search for places weighs against what, beside what it never does.

All weights are in the coin of the cable: how many millimetres of made audio lead one millimetre of something else is worth, in percent.
"""

from __future__ import annotations

from rigc.facts.fact import Fact

_OURS = "our choice: what builders gave up for what on the worked examples"

AUDIO_SHARE = Fact(100, "%", "a millimetre of an audio lead", _OURS)
OTHER_SHARE = Fact(10, "%", "a millimetre of a lead that carries no sound", _OURS)
BACKWARDS_SHARE = Fact(2, "%", "a millimetre that sound goes from left to right in an audio lead", _OURS)
TRODDEN_SHARE = Fact(20, "%", "a millimetre of bare deck before a unit that a foot works", _OURS)
STAMPED_SHARE = Fact(40, "%", "as much more before one that every preset stamps on", _OURS)
BEHIND_SHARE = Fact(10, "%", "a millimetre before the rear edge behind a unit that no foot works", _OURS)
UNBALANCED_SHARE = Fact(
    1000, "%", "a millimetre that the board balances outside its feet, where a mass is missing", _OURS
)
BROKEN_MM = Fact(60, "mm", "of audio lead for each rule that a lead breaks while the search goes on", _OURS)
