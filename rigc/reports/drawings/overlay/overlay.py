"""The changes of a deck -> the overlay: the old outlines grey and dashed, the new ones solid, a triangle beside each change."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import outline
from rigc.reports.drawings.deck.deck_frame import zones
from rigc.reports.drawings.deck.deck_ground import deck_ground, deck_words
from rigc.reports.drawings.deck.flags import flags, wish
from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.legend import legend, legend_foot
from rigc.reports.drawings.deck.sheet_view import PLAIN_LEGEND, ground_of, label_ground
from rigc.reports.drawings.deck.underside import stamp
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.unplaced_names import left_over
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.overlay.legend import SIGNS, overlay_words, triangle_row
from rigc.reports.drawings.overlay.marks import Mark
from rigc.reports.drawings.overlay.triangles import of_line, of_room
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Circle, Polyline, Shape


def overlay_drawing(before: Results, after: Results, deck: Deck, view: View, marks: tuple[Mark, ...]) -> Drawing:
    """One side of a deck (`view.below`) with the marks of that side."""
    paper = ground_of(view)
    side = tuple(mark for mark in marks if mark.under is view.below)
    shapes: list[Shape] = [*deck_ground(deck, view), *zones(view), *deck_words(deck, view)]
    shapes += [*_old_deck(before, deck, view), *(stamp(view) if view.below else ()), *_bodies(after, deck, view, side)]
    shapes += [*_lines(view, side), *_spots(view, side)]
    ground = Ground(label_ground(view, PLAIN_LEGEND), after.get(Kept))
    ground.drawn(shapes)
    named = [*_names(after, deck, view, side), *_numbers(after, view, side), *_triangles(view, side)]
    found, lost = labelled(ground, named)
    words = overlay_words(view.below, any(map(_lead, side)), any(map(_point, side)))
    top = view.bottom + view.along + PLAIN_LEGEND
    player = "" if view.below else "the player stands at this side; "
    told = f"{player}revision {before.rig.head.letter} dashed, revision {after.rig.head.letter} solid"
    foot = legend_foot(words, view.left, paper.right, top)
    row, foot = triangle_row(bool(after.rig.head.changes), told, view.left, paper.right, foot)
    more = left_over(lost, view.left, foot + 0.3, paper.right)
    return Drawing(
        name=f"overlay-{deck.name}-{'below' if view.below else 'above'}",
        title=f"Deck {deck.name}, revision {before.rig.head.letter} under {after.rig.head.letter}, "
        f"seen from {'below' if view.below else 'above'}",
        desc=_described(deck, view, side),
        width_mm=paper.right,
        height_mm=round(max([foot + 1, *(label.y + 2.7 for label in more)]), 1),
        shapes=(*shapes, *found, *legend(words, view.left, paper.right, top, SIGNS), *row, *more),
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
        outline(body, view) if body.thing in changed else outline(body, view, "tint").replace(width_mm=THIN)
        for body in there
        if body.under is view.below
    ]
    return [*shapes, *(outline(mark.bodies[0], view, "", hidden=True) for mark in side if mark.bodies[0] is not None)]


def _lines(view: View, side: tuple[Mark, ...]) -> list[Shape]:
    """The ways of changed leads beside each other, the old ones first."""
    shapes: list[Shape] = []
    for at, colour, pattern, width in ((0, "grey", "dashed", THIN), (1, "black", "solid", THICK)):
        found = tuple(way for mark in side if (way := mark.ways[at]) is not None)
        for way in side_by_side(found, view.scale):
            shapes.append(Polyline(tuple(view.point(*point) for point in way.points), colour, pattern, width))
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


def _names(after: Results, deck: Deck, view: View, side: tuple[Mark, ...]) -> list[tuple[str, Wish]]:
    """Names of what changed, those of old outlines grey, and of what stays."""
    there = [
        body for body in after.get(Placement).outlines.values() if body.deck == deck.name and body.under is view.below
    ]
    gone = [old for old, new in (mark.bodies for mark in side) if old and (new is None or new.thing != old.thing)]
    return [
        *((body.thing, named_in(view.room(body.area), body.thing, strong=False, sizes=(LETTERS,))) for body in there),
        *((body.thing, _greyed(named_in(view.room(body.area), body.thing, False, (LETTERS,)))) for body in gone),
    ]


def _greyed(wish: Wish) -> Wish:
    return Wish(partial(_grey, wish))


def _grey(wish: Wish) -> Iterator[Choice]:
    return (choice._replace(colour="grey") for choice in wish.choices())


def _numbers(after: Results, view: View, side: tuple[Mark, ...]) -> list[tuple[str, Wish]]:
    """A flag at both jacks of each lead that is there."""
    leads = after.get(Leads)
    marks = {way.mark for mark in side if (way := mark.ways[1]) is not None}
    ports = dict.fromkeys(port for mark in side if (way := mark.ways[1]) is not None for port in way.ports)
    plugged = {port: tuple(lead for lead in leads.at(port) if lead.mark in marks) for port in ports}
    found = flags(after.rig, after.get(Placement), view, {}, plugged)
    return [(flag.told, wish(flag)) for flag in found]


def _triangles(view: View, side: tuple[Mark, ...]) -> list[tuple[str, Wish]]:
    return [(f"mark {mark.label}", _triangle(mark, view)) for mark in side]


def _triangle(mark: Mark, view: View) -> Wish:
    body = mark.bodies[1] or mark.bodies[0]
    way = mark.ways[1] or mark.ways[0]
    if body is not None:
        return of_room(mark.label, view.room(body.area))
    if way is not None:
        return of_line(mark.label, tuple(view.point(*point) for point in way.points))
    x, y = view.point(*(mark.new or mark.old or (0.0, 0.0)))
    return of_room(mark.label, Room(x, y, x, y))


def _lead(mark: Mark) -> bool:
    return mark.ways != (None, None)


def _point(mark: Mark) -> bool:
    """Whether it is a jack or a hole."""
    return mark.bodies == (None, None) and mark.ways == (None, None)


def _described(deck: Deck, view: View, side: tuple[Mark, ...]) -> str:
    told = "; ".join(f"{mark.label}: {mark.what}, {mark.change}" for mark in side) or "nothing changed on this side"
    where = "below, the player at the top, left stays left" if view.below else "above, the player at the bottom"
    return f"Deck {deck.name} from {where}. {told}."
