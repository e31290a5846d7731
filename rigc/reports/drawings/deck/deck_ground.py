"""A deck -> its outline, rails, tiers, drop lines, keep-outs and reserved rooms as shapes."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.things import Area
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import around
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, Label, Line, Shape

MARGIN_RIGHT = 42.0
"""What the names of rails, tiers and drop lines need right of a deck, in mm."""

ZONES = 4.2
"""What the letters of the zones take beyond the deck and its case, in mm."""

_ROW = LETTERS + 0.9


def deck_ground(deck: Deck, view: View, drops: bool = True) -> tuple[Shape, ...]:
    """The outline, rails, tiers and, where wanted, drop lines."""
    return (
        boxed(_across(view, 0, view.depth_mm), width_mm=THICK),
        *(boxed(_across(view, rail.front_mm, rail.rear_mm), fill="tint") for rail in deck.rails),
        *(boxed(_across(view, tier.front_mm, tier.rear_mm), pattern="dash-dot") for tier in deck.tiers),
        *(_drop(view, line) for line in deck.drops_mm if drops),
    )


def deck_words(deck: Deck, view: View, aside: float = 0.0, drops: bool = True) -> tuple[Shape, ...]:
    """The names of the deck's parts right of it and of what lies `aside` of it, each with a leader to its part."""
    named = [(line, f"drop line, y {line:g}") for line in deck.drops_mm if drops]
    named += [
        ((rail.front_mm + rail.rear_mm) / 2, f"rail, y {rail.front_mm:g} to {rail.rear_mm:g}") for rail in deck.rails
    ]
    named += [((tier.front_mm + tier.rear_mm) / 2, f"tier {tier.name}, {tier.raised_mm:g} up") for tier in deck.tiers]
    wishes = tuple(view.point(0, y)[1] for y, _ in named)
    heights = spread(wishes, _ROW, view.top, view.bottom)
    shapes: list[Shape] = []
    for (_, text), wish, height in zip(named, wishes, heights, strict=True):
        start = view.right + aside + ZONES
        shapes += [
            Line(start + 0.4, wish, start + 3.6, height, width_mm=HAIR),
            Label(start + 4.4, height, text, level="middle"),
        ]
    return tuple(shapes)


def area_boxes(rig: Rig, deck: Deck, view: View) -> tuple[Shape, ...]:
    """Keep-outs cross-hatched and reserved rooms hatched."""
    fills = {"keep out": "cross-hatch", "reserved": "hatch"}
    return tuple(boxed(_room(area, view), pattern="dashed", fill=fills[word]) for word, area in _areas(rig, deck))


def area_wishes(rig: Rig, deck: Deck, view: View) -> list[tuple[str, Wish]]:
    """Their names, each with the places where it may stand."""
    named = [(_named(word, area), area) for word, area in _areas(rig, deck)]
    return [(words, _wish(_room(area, view), words)) for words, area in named]


def _named(word: str, area: Area) -> str:
    what = f"{word}: {area.what}" if area.what and area.what not in ("keep-out", "reserved") else word
    return f"{what} (chosen)" if area.chosen else what


def _areas(rig: Rig, deck: Deck) -> list[tuple[str, Area]]:
    kept = [("keep out", area) for area in deck.keep_outs]
    return [*kept, *(("reserved", area) for area in rig.reserved_on(deck))]


def _room(area: Area, view: View) -> Room:
    return view.room(area.room)


def _wish(here: Room, text: str) -> Wish:
    return Wish(partial(_choices, here, text))


def _choices(here: Room, text: str) -> Iterator[Choice]:
    across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
    yield Choice(across, here.bottom + 0.8, text, 0, anchor="middle", level="top")
    yield Choice(across, here.top - 0.8, text, 0, anchor="middle", level="baseline")
    yield Choice(here.right + 1, down, text, 0)
    yield Choice(here.left - 1, down, text, 0, anchor="end")
    yield from around((across, down), text)


def _across(view: View, front_mm: float, rear_mm: float) -> Room:
    return view.room(Rectangle(0, front_mm, view.width_mm, rear_mm - front_mm))


def _drop(view: View, line: float) -> Line:
    height = view.point(0, line)[1]
    return Line(view.left, height, view.right, height, "grey", "spaced")
