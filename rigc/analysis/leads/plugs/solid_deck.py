"""A jack's point -> the parts of its deck on which a base can lie at that jack's side and level, seen from above."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import JackPoint
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig


def solid_deck(rig: Rig, point: JackPoint) -> Iterator[Rectangle]:
    """The plate, or its rails; for a jack of a thing on a tier, that tier. None where the deck's size is not stated."""
    deck = rig.decks.get(point.deck or "")
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return
    width = deck.width_mm.value
    if point.raised_mm:
        stretches = [(t.front_mm, t.rear_mm) for t in deck.tiers if t.raised_mm == point.raised_mm]
    else:
        stretches = _plain(deck, deck.depth_mm.value)
    for front, rear in stretches:
        yield Rectangle(0.0, front, width, rear - front)


def _plain(deck: Deck, depth_mm: float) -> list[tuple[float, float]]:
    if not deck.rails:
        return [(0.0, depth_mm)]
    return [(rail.front_mm, rail.rear_mm) for rail in deck.rails]
