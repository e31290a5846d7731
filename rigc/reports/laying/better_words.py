"""Of what a layout has less than another one -> words, so that one knows what it does for whoever plays or wires it."""

from __future__ import annotations

from rigc.analysis.laying.alternatives import Better
from rigc.diagnostics.figures import short

_LENGTHS = {
    "onward": "sound goes {} mm less from left to right",
    "bare deck": "what a foot works stands nearer to it, {} mm in all",
    "stamped": "what presets stamp on stands nearer to the foot, {} mm in all",
    "behind": "what no foot works stands nearer to the rear edge, {} mm in all",
    "beside treadle": "feet have {} mm more room beside treadles, in all",
    "at hand": "what is plugged in or set by hand is nearer to an edge, {} mm in all",
    "balance": "the board balances {} mm nearer to its feet",
    "gaps": "the gaps in the rows are more even, by {} mm in all",
    "centring": "the rows stand nearer to the middle, {} mm in all",
    "on deck": "more hangs beneath: {} mm less of width and depth on top",
}
_PIECES = {
    "front lines": ("front edges make a line less", "front edges make {} lines less"),
    "crossings": (
        "a lead with sound crosses one of power once less",
        "leads with sound cross those of power {} times less",
    ),
    "other plugs": ("one plug less of another kind than is usual", "{} plugs less of another kind than is usual"),
    "rules that leads break": ("a lead less breaks a rule", "leads break {} rules less"),
}


def better_words(better: Better) -> str:
    """`audio leads are 70 mm shorter`."""
    if better.term in _PIECES:
        one, more = _PIECES[better.term]
        return one if better.less == 1 else more.format(better.less)
    said = _LENGTHS.get(better.term, better.term + " are {} mm shorter")
    return said.format(short(better.less / 10))
