"""Places at which nothing can stand -> the same numbers as they were more likely meant: in another unit, or x and y interchanged."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rigc.analysis.deck.placement import Outline
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.slips.interchanged import interchanged

_TYPED = re.compile(r"([\d.]+)\s*,\s*([\d.]+)\s*(?:cm|m|in|ft)")


def in_a_larger_unit(rig: Rig, bodies: Sequence[Outline]) -> tuple[Mend, ...]:
    """The same numbers in centimetres, or in inches, where all are on the deck then."""
    typed = [(body, rig.places[body.thing].numbers) for body in bodies]
    deck = rig.decks.get(bodies[0].deck or "")
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return ()
    for unit, times in (("cm", 10.0), ("in", 25.4)):
        fit = all(
            body.x_mm * times + body.width_mm <= deck.width_mm.value
            and body.y_mm * times + body.depth_mm <= deck.depth_mm.value
            for body in bodies
        )
        edits = [
            Replace(at, f"{at.text.removesuffix('mm')}{unit}")
            for _, at in typed
            if at is not None and at.text.endswith("mm")
        ]
        if fit and len(edits) == len(typed):
            return (Mend(f"write their places in {unit}, if that is meant: `{edits[0].text}`", tuple(edits)),)
    return ()


def in_mm(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    """The same numbers in millimetres, where they were typed with another unit and no part of the thing is on the deck."""
    place = rig.places[body.thing]
    assert deck.width_mm is not None and deck.depth_mm is not None
    width, depth = deck.width_mm.value, deck.depth_mm.value
    typed = None if place.numbers is None else _TYPED.fullmatch(place.numbers.text)
    if place.numbers is None or typed is None or (body.x_mm < width and body.y_mm < depth):
        return ()
    x, y = float(typed[1]), float(typed[2])
    if x + body.width_mm > width or y + body.depth_mm > depth:
        return ()
    return (Mend(f"write {x:g}, {y:g} mm, if that is meant", (Replace(place.numbers, f"{x:g}, {y:g} mm"),)),)


def interchanged_there(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    """x and y the other way round, where the thing is on the deck so."""
    numbers = rig.places[body.thing].numbers
    if numbers is None or deck.width_mm is None or deck.depth_mm is None:
        return ()
    fits = body.y_mm + body.width_mm <= deck.width_mm.value and body.x_mm + body.depth_mm <= deck.depth_mm.value
    return interchanged(numbers) if fits else ()
