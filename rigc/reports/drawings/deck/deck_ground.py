"""A deck -> its outline, rails, tiers, drop lines, keep-outs and reserved rooms as shapes."""

from __future__ import annotations

from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.things import Area
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, Label, Line, Shape

MARGIN_RIGHT = 42.0
"""What the names of rails, tiers and drop lines need right of a deck, in mm."""

_ROW = LETTERS + 0.9


def deck_ground(deck: Deck, view: View) -> tuple[Shape, ...]:
    """The outline, rails, tiers and drop lines."""
    return (
        boxed(_across(view, 0, view.depth_mm), width_mm=THICK),
        *(boxed(_across(view, rail.front_mm, rail.rear_mm), fill="tint") for rail in deck.rails),
        *(boxed(_across(view, tier.front_mm, tier.rear_mm), pattern="dash-dot") for tier in deck.tiers),
        *(_drop(view, line) for line in deck.drops_mm),
    )


def deck_words(deck: Deck, view: View, room: LabelRoom) -> tuple[Shape, ...]:
    """The names of the deck's parts right of it, each with a leader to its part."""
    named = [(line, f"drop line, y {line:g}") for line in deck.drops_mm]
    named += [
        ((rail.front_mm + rail.rear_mm) / 2, f"rail, y {rail.front_mm:g} to {rail.rear_mm:g}") for rail in deck.rails
    ]
    named += [((tier.front_mm + tier.rear_mm) / 2, f"tier {tier.name}, {tier.raised_mm:g} up") for tier in deck.tiers]
    wishes = tuple(view.point(0, y)[1] for y, _ in named)
    heights = spread(wishes, _ROW, view.top, view.bottom)
    shapes: list[Shape] = []
    for (_, text), wish, height in zip(named, wishes, heights, strict=True):
        label = Label(view.right + view.aside + 5, height, text, level="middle")
        room.keep(label)
        shapes += [
            Line(view.right + view.aside + 0.8, wish, view.right + view.aside + 4.2, height, "grey", width_mm=HAIR),
            label,
        ]
    return tuple(shapes)


def areas(rig: Rig, deck: Deck, view: View, room: LabelRoom) -> tuple[Shape, ...]:
    """Keep-outs cross-hatched and reserved rooms hatched, each with its name."""
    shapes: list[Shape] = []
    for area in deck.keep_outs:
        shapes += _named(area, view, room, "cross-hatch", "keep out")
    for area in rig.reserved_rooms if rig.deck is deck else ():
        shapes += _named(area, view, room, "hatch", "reserved")
    return tuple(shapes)


def _named(area: Area, view: View, room: LabelRoom, fill: str, word: str) -> list[Shape]:
    here = view.room(Rectangle(area.x_mm, area.y_mm, area.width_mm, area.depth_mm))
    words = f"{word}: {area.what}" if area.what else word
    label = room.place(_choices(here, words))
    return [boxed(here, pattern="dashed", fill=fill), *([label] if label is not None else [])]


def _choices(here: Room, text: str) -> list[Label]:
    across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
    return [
        Label(across, down, text, anchor="middle", level="middle", halo=True),
        Label(across, here.bottom + 0.8, text, anchor="middle", level="top", halo=True),
        Label(across, here.top - 0.8, text, anchor="middle", halo=True),
        Label(across, down, text, anchor="middle", level="middle", rotation=-90, halo=True),
        Label(here.right + 1, down, text, level="middle", halo=True),
        Label(here.left - 1, down, text, anchor="end", level="middle", halo=True),
    ]


def _across(view: View, front_mm: float, rear_mm: float) -> Room:
    return view.room(Rectangle(0, front_mm, view.width_mm, rear_mm - front_mm))


def _drop(view: View, line: float) -> Line:
    height = view.point(0, line)[1]
    return Line(view.left, height, view.right, height, "grey", "spaced")
