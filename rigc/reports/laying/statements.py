"""Places -> the statements that would keep them, to be pasted into the source."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.deck import Place


def statement(place: Place) -> str:
    """`plumb at 265, 10 mm`: as the language writes a place."""
    words = [place.thing, "under at" if place.under else "at", f"{place.x_mm:g}, {place.y_mm:g} mm"]
    if place.turned:
        words.append(f"turned {place.turned} deg")
    if place.tier is not None:
        words.append(f"on {place.tier}")
    return " ".join(words)


def place_block(places: Iterable[Place]) -> tuple[str, ...]:
    """A whole `place { ... }` block, line by line."""
    return ("place {", *(f"  {statement(place)}" for place in places), "}")
