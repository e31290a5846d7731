"""Places at which nothing can stand -> the same numbers as they were more likely meant: in another unit, or x and y interchanged."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rigc.analysis.deck.placement import Outline
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.slips.interchanged import interchanged
from rigc.source import Span

_SIDES = re.compile(r"([\d.]+)(\s*x\s*)([\d.]+)(\s*(?:mm|cm|m|in|ft))")
_TYPED = re.compile(r"([\d.]+)\s*,\s*([\d.]+)\s*(?:cm|m|in|ft)")
_IN_MM = re.compile(r"(\d\d+|0)\s*,\s*(\d\d+|0)\s*mm")


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


def a_nought_less(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    """The same numbers, a nought less where a thing lies wholly off its deck by one that ends in a nought: `1650` for `165`."""
    place = rig.places[body.thing]
    typed = None if place.numbers is None else _IN_MM.fullmatch(place.numbers.text)
    if place.numbers is None or typed is None or deck.width_mm is None or deck.depth_mm is None:
        return ()
    x = typed[1] if body.x_mm < deck.width_mm.value else typed[1].removesuffix("0")
    y = typed[2] if body.y_mm < deck.depth_mm.value else typed[2].removesuffix("0")
    on_it = float(x) + body.width_mm <= deck.width_mm.value and float(y) + body.depth_mm <= deck.depth_mm.value
    if not on_it or not wholly_off(body, deck):
        return ()
    return (Mend(f"write {x}, {y} mm, if that is meant", (Replace(place.numbers, f"{x}, {y} mm"),)),)


def wholly_off(body: Outline, deck: Deck) -> bool:
    """Whether no part of it is on its deck: its place is a slip, and what follows from it says nothing."""
    if deck.width_mm is None or deck.depth_mm is None:
        return False
    area = body.area
    beside = area.x_mm >= deck.width_mm.value or area.right_mm <= 0
    return beside or area.y_mm >= deck.depth_mm.value or area.rear_mm <= 0


def interchanged_there(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    """x and y the other way round, where the thing is on the deck so."""
    numbers = rig.places[body.thing].numbers
    if numbers is None or deck.width_mm is None or deck.depth_mm is None:
        return ()
    fits = (
        min(body.x_mm, body.y_mm) >= 0
        and body.y_mm + body.width_mm <= deck.width_mm.value
        and body.x_mm + body.depth_mm <= deck.depth_mm.value
    )
    return interchanged(numbers) if fits else ()


def without_minus(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    """The same numbers without their minus, where the thing is on the deck so."""
    numbers = rig.places[body.thing].numbers
    if numbers is None or "-" not in numbers.text or deck.width_mm is None or deck.depth_mm is None:
        return ()
    x, y = abs(body.x_mm), abs(body.y_mm)
    if x + body.width_mm > deck.width_mm.value or y + body.depth_mm > deck.depth_mm.value:
        return ()
    right = numbers.text.replace("-", "")
    return (Mend(f"write {right}, without the minus", (Replace(numbers, right),)),)


def deck_turned(deck: Deck, bodies: Sequence[Outline]) -> tuple[Mend, ...]:
    """The sides of a deck the other way round, where all that stands on it or hangs below is within it so."""
    if deck.width_mm is None or deck.depth_mm is None:
        return ()
    width, depth = deck.depth_mm.value, deck.width_mm.value
    whole = Span(deck.width_mm.span.source, deck.width_mm.span.start, deck.depth_mm.span.end)
    typed = _SIDES.fullmatch(whole.text)
    fit = all(
        min(body.x_mm, body.y_mm) >= 0 and body.area.right_mm <= width and body.area.rear_mm <= depth for body in bodies
    )
    if not fit or typed is None:
        return ()
    right = f"{typed[3]}{typed[2]}{typed[1]}{typed[4]}"
    return (Mend(f"write size {right}, if width and depth were interchanged", (Replace(whole, right),)),)
