"""A unit as people write it -> the unit that was probably meant."""

from __future__ import annotations

from collections.abc import Collection

from rigc.diagnostics.near import nearest
from rigc.syntax.spelled_units import SPELLED

_LETTERS = {"K": "kohm", "M": "Mohm", "R": "ohm", "n": "nF", "p": "pF", "u": "uF"}
"""Letters that stand for the whole unit where only a resistance or a capacitance can: printed values, common practice, no source."""


def said_for(typed: str) -> str:
    """The unit that people mean by a word; an empty text if it is none of these."""
    return _LETTERS.get(typed) or SPELLED.get(typed) or (SPELLED.get(typed.lower(), "") if len(typed) > 2 else "")


def meant(typed: str, fits: Collection[str]) -> str:
    """The unit most like what was typed, of those that fit there; an empty text if none is like it."""
    short = said_for(typed)
    return short if short in fits else nearest(typed, fits)
