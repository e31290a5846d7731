"""Text -> how wide it is on a page, and into how many lines it breaks. Estimates: the browser has the last word."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from rigc.output.escapes import held, pieces
from rigc.reports.drawings.means.lettering import EM_PER_CAPITAL, text_width

POINT = 25.4 / 72
NARROW = 0.904
"""The widths of the condensed cut, as part of those of the regular one (the mean of the letters of a cable list)."""

_HAIR = 0.01  # mm: sums of floats are no reason to break a line
_ROOMY = 1.01  # by so much a drawing's letters are taken for wider than they are


class Look(NamedTuple):
    """How letters are set: their size in mm, whether they are bold, whether condensed. A tuple, for widths are looked up by it over and over."""

    size: float
    strong: bool = False
    narrow: bool = False


@lru_cache(maxsize=1 << 14)
def width(text: str, look: Look) -> float:
    """The width of a line of text in mm."""
    return text_width(text, 1 / EM_PER_CAPITAL, look.strong) * look.size * (NARROW if look.narrow else 1) / _ROOMY


def widest(text: str, look: Look) -> float:
    """The width of the widest of its lines, in mm."""
    return max(width(line, look) for line in text.split("\n")) if "\n" in text else width(text, look)


@lru_cache(maxsize=1 << 14)
def longest(text: str, look: Look) -> float:
    """The widest piece of a text that can't be broken, in mm."""
    return max((width(piece, look) for word in held(text).split(" ") for piece in pieces(word)), default=0.0)


def lines(text: str, look: Look, room: float) -> int:
    """Into how many lines a text breaks that has so much room, in mm; one for no text."""
    return sum(_lines(line, look, room) for line in text.split("\n")) if "\n" in text else _lines(text, look, room)


def _lines(text: str, look: Look, room: float) -> int:
    if width(text, look) <= room + _HAIR:
        return 1
    found, used = 1, 0.0
    for number, word in enumerate(held(text).split(" ")):
        for part, piece in enumerate(pieces(word)):
            space = width(" ", look) if number and not part else 0.0
            needed = width(piece, look)
            if used and used + space + needed > room + _HAIR:
                found, used = found + 1, needed
            else:
                used += space + needed
    return found
