"""A point of a deck -> its zone: columns 1 to 8 from the left, rows A to F from the rear, as on the frame of a drawing (ISO 5457, from memory)."""

from __future__ import annotations

from rigc.model.deck import Deck

COLUMNS, ROWS = "12345678", "ABCDEF"


def zone(deck: Deck | None, x_mm: float, y_mm: float) -> str:
    """`C4`; what lies beyond an edge belongs to the zone beside it; empty where the deck's size is not stated."""
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return ""
    return (
        ROWS[_part(deck.depth_mm.value - y_mm, deck.depth_mm.value, len(ROWS))]
        + COLUMNS[_part(x_mm, deck.width_mm.value, len(COLUMNS))]
    )


def _part(at_mm: float, whole_mm: float, parts: int) -> int:
    return max(0, min(parts - 1, int(at_mm / whole_mm * parts)))
