"""A fact for want of which a rule can't be judged, in the words of a finding -> where it is written, and the statement with a blank."""

from __future__ import annotations

import re

_THING, _JACK = r"'(?P<thing>[^'.]+)'", r"'(?P<thing>[^'.]+)\.(?P<jack>[^']+)'"
_BEHIND = "measure it and write it behind '{jack}' in the block of '{thing}'"
_STATEMENTS = {
    rf"the mass of {_THING}": "weigh it and write it in the block of '{thing}': `mass ___ g`",
    rf"the height of {_JACK}": f"{_BEHIND}: `up ___ mm`",
    rf"how high {_JACK} is": f"{_BEHIND}: `up ___ mm`",
    rf"where {_JACK} is(?: on its body)?": f"{_BEHIND}: `left ___ mm up ___ mm`",
    rf"the (?:height|body) of {_THING}": "measure it and write it in the block of '{thing}': `body ___ x ___ x ___ mm`",
    rf"the height of the plug {_THING}": "measure it and write it in the block of '{thing}': `tall ___ mm`",
    rf"how far from the jack the cable leaves plug {_THING}": (
        "measure it and write it in the block of '{thing}': `leaves at ___ mm`"
    ),
    rf"(?:the plug kind at|a plug kind in the stock that fits) {_JACK}": (
        "measure the plug that goes in there and declare it: `plug NAME {{` with the lines `fits ___`, `stands out ___ mm`, "
        "`wide ___ mm` and `tall ___ mm`"
    ),
    rf"the place of {_THING}": "write it in a place block: `{thing} at ___, ___ mm`",
    rf"where the feet of {_THING} are": "measure how far its feet stand in, and write it in the block of '{thing}': `feet ___ mm in`",
    rf"the size of deck {_THING}": "measure it and write it in the block of '{thing}': `size ___ x ___ mm`",
    rf"the thickness of deck {_THING}": "measure it and write it in the block of '{thing}': `thickness ___ mm`",
    rf"the clearance of deck {_THING}": "measure it and write it in the block of '{thing}': `clearance ___ mm`",
    rf"the drop lines of deck {_THING}": "write in the block of '{thing}' along which lines leads go through it: `drop ___ mm`",
    rf"the strip of {_THING}": "say in a mounting block what holds it: `{thing} with STRIP`",
    rf"the pull of the strip {_THING}": "measure it with a spring balance and write it in the block of '{thing}': `pull ___ kPa`",
    rf"the width of the strip {_THING}": "measure it and write it in the block of '{thing}': `wide ___ mm`",
    rf"what the strip {_THING} mates with": "look, and write it in the block of '{thing}': `mates ___`",
    rf"the conductors of cable {_THING}": "count them and write it in the block of '{thing}': `conductors ___`",
}


def how_to_state(want: str) -> str:
    """What to do about the fact, as an order; `state` and the fact itself where its statement depends on more than its words tell."""
    for words, order in _STATEMENTS.items():
        found = re.fullmatch(words, want)
        if found:
            return order.format(**found.groupdict())
    return f"state {want}"
