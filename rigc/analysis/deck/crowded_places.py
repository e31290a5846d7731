"""Rig -> the places at which three things or more are stated to stand: none of them is known to be where it will stand."""

from __future__ import annotations

from rigc.model.deck import Place
from rigc.model.rig import Rig

_MANY = 3
"""Two at one place overlap, and one of them may be moved; of three the places were most likely not written yet."""


def crowded_places(rig: Rig) -> tuple[tuple[Place, ...], ...]:
    """Of each such place what stands there, on one side of one deck, in the order of the source."""
    first = None if rig.deck is None else rig.deck.name
    at: dict[tuple[str | None, bool, float, float], list[Place]] = {}
    for place in rig.places.values():
        at.setdefault((place.deck or first, place.under, place.x_mm, place.y_mm), []).append(place)
    return tuple(tuple(places) for places in at.values() if len(places) >= _MANY)


def own_place(thing: str) -> str:
    """`a place of its own for 'tern'`: alike in the finding that asks for it and in what wants it."""
    return f"a place of its own for '{thing}'"
