"""Words of the trade that this language says otherwise, run together or the wrong way round -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.syntax import words
from rigc.syntax.mistake import Mistake, Wording

OURS = {
    "weight": "mass", "weighs": "mass", "dimensions": "body", "width": "body", "depth": "body", "height": "body",
    "size": "body", "footswitch": "switch", "stomp": "switch", "pot": "knob", "current": "draws", "consumption": "draws",
    "inrush": "starts", "voltage": "needs", "volts": "needs", "supplied": "needs", "power-in": "inlet", "socket": "inlet",
    "delay-time": "latency", "buffered": "bypass buffered", "true": "bypass true", "true-bypass": "bypass true",
    "mute": "unpowered mutes", "pickup": "inductance", "pedal": "unit", "effect": "unit", "psu": "supply",
    "brick": "supply", "power-supply": "supply", "amplifier": "amp", "guitar": "instrument", "bass": "instrument",
    "keyboard": "instrument", "include": "use", "import": "use", "pedalboard": "deck", "plate": "deck", "cables": "leads",
    "signal": "chain", "path": "chain", "venue": "scenario", "below": "under", "underneath": "under", "beneath": "under",
    "minus": "negative", "plus": "positive", "negative": "centre-negative", "positive": "centre-positive",
    "toggle": "latching",
}  # fmt: skip
"""A word as people say it, and the one that stands for it here, where that may stand; common speech, no source."""

_MARKS = {
    "country": ("code of a country", "two capitals (ISO 3166-1), for example DE"),
    "origin": ("code of a country", "two capitals (ISO 3166-1), for example DE"),
    "revision": ("letter of a revision", "a capital letter, for example B"),
    "follows": ("letter of a revision", "a capital letter, for example B"),
    "colour": ("code of a colour", "two capitals (IEC 60757), for example BU"),
}


def our_word(word: str, mine: frozenset[str] | list[str]) -> str:
    """What this language says for a word of the trade, if that may stand here; else nothing."""
    ours = OURS.get(word.lower(), "")
    return ours if ours.split(" ")[0] in mine else ""


def _no_arrow(m: Mistake) -> Wording | None:
    """`guitar > marl`, `guitar to marl`, `marl lant`."""
    if not m.awaits("->"):
        return None
    typed = re.match(r"[-=~\u2013\u2014]*>|[-=~\u2013\u2014]+|(?:in)?to\b", m.after)
    if typed:
        return f"'{typed.group()}' joins nothing", "an arrow goes here", "write ->"
    if "->" in m.before and re.fullmatch(r"[a-z][a-z0-9-]*", m.word):
        return f"'{m.word}' stands behind another name", "an arrow is missing before it", f"write -> before '{m.word}'"
    return None


def _after(m: Mistake) -> Wording | None:
    """`order lant after marl`: what `before` would turn round."""
    order = re.match(r"[ \t]*order[ \t]+([a-z][a-z0-9-]*)[ \t]+\Z", m.before)
    other = re.match(r"(?:after|behind)[ \t]+([a-z][a-z0-9-]*)", m.after)
    if order and other:
        turned = f"write it the other way round: order {other[1]} before {order[1]}"
        return f"an order is told with 'before', not with '{m.word}'", "this word", turned
    return None


def _no_mark(m: Mistake) -> Wording | None:
    head = m.before.split()[:1]
    if m.expected == {"MARK"} and head and head[0] in _MARKS:
        what, example = _MARKS[head[0]]
        return f"'{m.word}' is no {what}", "a mark in capitals goes here", f"write {example}"
    return None


def _adaptor(m: Mistake) -> Wording | None:
    """`D14 doubling for lant`."""
    kind = re.match(r"[ \t]*[A-Z]+\d+[a-z]?[ \t]+([a-z-]+)[ \t]+\Z", m.before)
    if m.block == "leads" and kind and m.word == "for":
        advice = "write 'series', 'parallel', 'reversing' or 'size' before 'for'"
        return f"'{kind[1]}' is no kind of adaptor", "an adaptor is told here", advice
    return None


def _spare(m: Mistake) -> Wording | None:
    """`1 fuse in "lid pocket"`."""
    if m.block == "spares" and m.awaits("of") and re.match(r"[a-z]", m.word):
        return f"'{m.word}' is no kind of lead or plug", "anything else is a text", f'write of "{m.word}"'
    return None


def _place(m: Mistake) -> Wording | None:
    """`marl 100, 10 mm`."""
    if m.block == "place" and m.awaits("at") and re.match(r"-?\d", m.after):
        return f"'{m.word}' stands right behind the name", "a word is missing before it", f"write at {m.after.strip()}"
    return None


def _others(m: Mistake) -> Wording | None:
    """`others from mill.o2`."""
    if m.block == "power" and m.sign == "." and m.before.split()[:2] == ["others", "from"]:
        return "an outlet is named for all other units", "this dot", "name supplies alone; rigc chooses the outlets"
    return None


def _said_otherwise(m: Mistake) -> Wording | None:
    ours = our_word(m.word, words.keywords(m.expected, m.literals))
    if ours and m.before.strip():
        return f"'{m.word}' means nothing here", f"did you mean '{ours}'?", f"write '{ours}'"
    return None


TRADE_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _after,
    _adaptor,
    _spare,
    _place,
    _others,
    _no_arrow,
    _no_mark,
    _said_otherwise,
)
