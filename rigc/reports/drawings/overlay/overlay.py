"""The changes of a deck -> the overlay: the old outlines grey and dashed, the new ones solid, a triangle beside each change."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.results import Results
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import name_choices, outline, outside_choices
from rigc.reports.drawings.deck.deck_frame import zones
from rigc.reports.drawings.deck.deck_ground import ZONES, deck_ground, deck_words
from rigc.reports.drawings.deck.lead_shapes import lead_numbers
from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.sheet_view import PLAIN_LEGEND, ground_of, label_ground
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.overlay.legend import overlay_legend
from rigc.reports.drawings.overlay.marks import Mark
from rigc.reports.drawings.overlay.triangles import along, around, triangle
from rigc.reports.drawings.shapes import HAIR, THICK, THIN, Circle, Label, Polyline, Shape

STAMP = "SEEN FROM BELOW, player at the top"

_FOOT = 25.0  # from the deck down to the line that names the revisions, below three rows of the legend, in mm


def overlay_drawing(before: Results, after: Results, deck: Deck, view: View, marks: tuple[Mark, ...]) -> Drawing:
    """One side of a deck (`view.below`) with the marks of that side."""
    ground, room = ground_of(view), LabelRoom(label_ground(view, PLAIN_LEGEND))
    side = tuple(mark for mark in marks if mark.under is view.below)
    shapes: list[Shape] = [
        *deck_ground(deck, view),
        *zones(view),
        *deck_words(deck, view),
        *_old_deck(before, deck, view),
    ]
    room.keep(*(shape for shape in shapes if isinstance(shape, Label)))
    shapes += _stamp(view, room)
    shapes += _bodies(after, deck, view, side)
    shapes += _lines(view, side, room)
    triangles = [part for mark in side if mark.bodies != (None, None) for part in _triangle(mark, view, room)]
    names = _names(after, deck, view, side, room)
    numbers = lead_numbers(tuple(way for mark in side if (way := mark.ways[1]) is not None), view, room)
    triangles += [part for mark in side if mark.bodies == (None, None) for part in _triangle(mark, view, room)]
    shapes += [*_spots(view, side), *names, *numbers, *triangles]
    leads, rings = any(map(_lead, side)), any(map(_point, side))
    low, numbered = view.bottom + view.along + PLAIN_LEGEND, bool(after.rig.head.changes)
    shapes += overlay_legend(view.left, ground.right, low, view.below, leads, rings, numbered)
    player = "" if view.below else "the player stands at this side; "
    foot = f"{player}revision {before.rig.head.letter} dashed, revision {after.rig.head.letter} solid"
    return Drawing(
        name=f"overlay-{deck.name}-{'below' if view.below else 'above'}",
        title=f"Deck {deck.name}, revision {before.rig.head.letter} under {after.rig.head.letter}, "
        f"seen from {'below' if view.below else 'above'}",
        desc=_described(deck, view, side),
        width_mm=ground.right,
        height_mm=view.bottom + view.along + _FOOT + 1,
        shapes=(*shapes, Label(view.left, view.bottom + view.along + _FOOT, foot)),
        scale=view.scale,
    )


def _old_deck(before: Results, deck: Deck, view: View) -> list[Shape]:
    """The outline that the deck had, where it has another now."""
    old = before.rig.decks.get(deck.name)
    if old is None or old.width_mm is None or old.depth_mm is None:
        return []
    width, depth = min(old.width_mm.value, view.width_mm), min(old.depth_mm.value, view.depth_mm)
    if (old.width_mm.value, old.depth_mm.value) == (view.width_mm, view.depth_mm):
        return []
    return [boxed(view.room(Rectangle(0, 0, width, depth)), "grey", "dashed")]


def _stamp(view: View, room: LabelRoom) -> list[Shape]:
    if not view.below:
        return []
    label = Label(view.left, view.top - ZONES - 2, STAMP, size_mm=3.5, strong=True)
    room.keep(label)
    return [label]


def _bodies(after: Results, deck: Deck, view: View, side: tuple[Mark, ...]) -> list[Shape]:
    """New outlines over those that stay, old ones over both; from below what stands on top is dotted."""
    changed = {mark.bodies[1].thing for mark in side if mark.bodies[1] is not None}
    there = [body for body in after.get(Placement).outlines.values() if body.deck == deck.name]
    shapes: list[Shape] = []
    if view.below:
        shapes += [
            outline(body, view, "").replace(colour="grey", pattern="dotted", width_mm=HAIR)
            for body in there
            if not body.under
        ]
    shapes += [
        outline(body, view).replace(width_mm=THICK if body.thing in changed else THIN)
        for body in there
        if body.under is view.below
    ]
    return [*shapes, *(outline(mark.bodies[0], view, "", hidden=True) for mark in side if mark.bodies[0] is not None)]


def _lines(view: View, side: tuple[Mark, ...], room: LabelRoom) -> list[Shape]:
    """The ways of changed leads beside each other, the old ones first."""
    shapes: list[Shape] = []
    for at, colour, pattern in ((0, "grey", "dashed"), (1, "black", "solid")):
        found = tuple(way for mark in side if (way := mark.ways[at]) is not None)
        for way in side_by_side(found, view.scale):
            points = tuple(view.point(*point) for point in way.points)
            shapes.append(Polyline(points, colour, pattern, THIN))
            room.line(points)
    return shapes


def _spots(view: View, side: tuple[Mark, ...]) -> list[Shape]:
    """Jacks and holes as rings: where they were dashed, where they are solid."""
    shapes: list[Shape] = []
    for mark in side:
        if _point(mark):
            for point, colour, pattern in ((mark.old, "grey", "dashed"), (mark.new, "black", "solid")):
                if point is not None:
                    shapes.append(Circle(*view.point(*point), 1.4, colour, pattern))
    return shapes


def _names(after: Results, deck: Deck, view: View, side: tuple[Mark, ...], room: LabelRoom) -> list[Shape]:
    """Names of what changed first, those of old outlines grey; then of what stays, where there is room."""
    there = [
        body for body in after.get(Placement).outlines.values() if body.deck == deck.name and body.under is view.below
    ]
    changed = [mark.bodies[1] for mark in side if mark.bodies[1] is not None]
    gone = [old for old, new in (mark.bodies for mark in side) if old and (new is None or new.thing != old.thing)]
    labels = [_name(body, view, room) for body in changed]
    labels += [None if (label := _name(body, view, room)) is None else label.replace(colour="grey") for body in gone]
    labels += [_name(body, view, room) for body in there if body not in changed]
    return [label for label in labels if label is not None]


def _name(body: Outline, view: View, room: LabelRoom) -> Label | None:
    here = view.room(body.area)
    choices = name_choices(here, body.thing)
    return room.place(choices, here) or room.place((*choices, *outside_choices(here, body.thing)))


def _triangle(mark: Mark, view: View, room: LabelRoom) -> tuple[Shape, ...]:
    body = mark.bodies[1] or mark.bodies[0]
    way = mark.ways[1] or mark.ways[0]
    if body is not None:
        here = view.room(body.area)
        return triangle(mark.label, around(here), here, room)
    if way is not None:
        for spot, at in along(tuple(view.point(*point) for point in way.points)):
            drawn = triangle(mark.label, (spot,), Room(*at, *at), room)
            if drawn:
                return drawn
        return ()
    x, y = view.point(*(mark.new or mark.old or (0.0, 0.0)))
    return triangle(mark.label, around(Room(x, y, x, y)), Room(x, y, x, y), room)


def _lead(mark: Mark) -> bool:
    return mark.ways != (None, None)


def _point(mark: Mark) -> bool:
    """Whether it is a jack or a hole."""
    return mark.bodies == (None, None) and mark.ways == (None, None)


def _described(deck: Deck, view: View, side: tuple[Mark, ...]) -> str:
    told = "; ".join(f"{mark.label}: {mark.what}, {mark.change}" for mark in side) or "nothing changed on this side"
    where = "below, the player at the top, left stays left" if view.below else "above, the player at the bottom"
    return f"Deck {deck.name} from {where}. {told}."
