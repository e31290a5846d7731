"""Laying: what the search for places weighs against what, beside what it never does.

All weights are in the coin of the cable: how many millimetres of made audio lead one millimetre of something else is worth, in percent.
"""

from __future__ import annotations

from rigc.facts.fact import Fact

_OURS = "our choice: what builders gave up for what on the worked examples"
_REACH = "our choice; common practice, no source: the player's reach comes before a few cents of cable"

AUDIO_SHARE = Fact(100, "%", "a millimetre of an audio lead", _OURS)
OTHER_SHARE = Fact(10, "%", "a millimetre of a lead that carries no sound", _OURS)
BACKWARDS_SHARE = Fact(2, "%", "a millimetre that sound goes from left to right in an audio lead", _OURS)
TRODDEN_SHARE = Fact(350, "%", "a millimetre of bare deck before a unit that a foot works", _REACH)
STAMPED_SHARE = Fact(350, "%", "as much more before one that every preset stamps on", _REACH)
LOOPED_SHARE = Fact(20, "%", "of that before one in a loop of a switcher, which is stepped on seldom", _REACH)
BESIDE_SHARE = Fact(
    4000,
    "%",
    "a millimetre that a foot on one thing lacks to a treadle beside it",
    "our choice; common practice, no source: what stands close beside a treadle gets stepped on",
)
BEHIND_SHARE = Fact(350, "%", "a millimetre before the rear edge behind a unit that no foot works", _OURS)
AT_HAND_SHARE = Fact(300, "%", "a millimetre beyond a hand's reach from an edge to what it plugs in at a show", _REACH)
UNBALANCED_SHARE = Fact(
    1000, "%", "a millimetre that the board balances outside its feet, where a mass is missing", _OURS
)
LINE_SHARE = Fact(2500, "%", "a line of front edges, beside a millimetre of audio lead", _OURS)
GAP_SHARE = Fact(2, "%", "a millimetre by which the gaps in such a line differ", _OURS)
CENTRING_SHARE = Fact(10, "%", "a millimetre by which the middle of such a line is off that of the deck", _OURS)
CROSSING_SHARE = Fact(
    1000, "%", "a crossing of a lead with sound and one of power, beside a millimetre of audio lead", _OURS
)
ON_TOP_SHARE = Fact(
    200,
    "%",
    "a millimetre of the width and of the depth of what stands on top and could hang, untouched as it is",
    _OURS,
)
PLUG_SHARE = Fact(2000, "%", "a plug of another kind than is usual, beside a millimetre of audio lead", _OURS)
BROKEN_MM = Fact(60, "mm", "of audio lead for each rule that a lead breaks while the search goes on", _OURS)

_WISH = "our choice; common practice, no source"

EDGE_MM = Fact(60, "mm", "from an edge of the deck to what is near the hand that plugs it in", _WISH)
HAND_MM = Fact(20, "mm", "of free room round a knob for two fingers", _WISH)
SHOE_MM = Fact(70, "mm", "from a knob that is free to the middle of a switch of another thing", _WISH)
STRIDE_MM = Fact(
    500, "mm", "that a foot reaches aside while the other stands, and half as much to the front or rear", _WISH
)
TOGETHER_MM = Fact(50, "mm", "at most from one to the next of things that are together", _WISH)
AWAY_MM = Fact(150, "mm", "between things that are away from each other, where no distance is said", _WISH)
PLUG_AWRY_MM = Fact(10, "mm", "that a wish is missed by for each plug that looks to another side", _OURS)
OTHER_SIDE_MM = Fact(1, "mm", "that a wish is missed by at least on the other side of the deck", _OURS)
