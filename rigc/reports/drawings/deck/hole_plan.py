"""A deck and its holes -> the plan of the bare deck: what is drilled and cut and where, and where strips go, before anything stands on it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.routes.deck_holes import FOOT, PANEL, DeckHole
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.deck_frame import DATUM, front_edge, running, zones
from rigc.reports.drawings.deck.deck_ground import deck_ground, deck_words
from rigc.reports.drawings.deck.legend import legend, legend_foot
from rigc.reports.drawings.deck.sheet_view import foot_of, ground_of, label_ground
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_choices import around, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.unplaced_names import left_over
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import HAIR, LETTERS, THIN, Box, Circle, Line, Point, Shape

_FOOT_MM = 12.0  # side of the sign of a foot
_LEAST = 0.8  # radius of a hole as drawn, on paper


def hole_plan(
    deck: Deck,
    view: View,
    placement: Placement,
    holes: tuple[DeckHole, ...],
    strips: MountingStrip,
    kept: Kept = NOTHING_KEPT,
) -> Drawing:
    """Holes as centre marks with number and diameter, slots, panel jacks, feet, the strips on the deck, and running dimensions."""
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
    under_strips = {each.thing: each.deck_pieces for each in strips.units if not each.skew_deg}
    pieces = [(body, piece) for body in bodies for piece in under_strips.get(body.thing, ())]
    shapes: list[Shape] = [*deck_ground(deck, view), *zones(view), front_edge(view), *deck_words(deck, view)]
    across = [x for hole in holes for x in (hole.x_mm, hole.right_mm)]
    shapes += running(view, across, (hole.y_mm for hole in holes))
    shapes += [boxed(view.room(piece), "grey", width_mm=HAIR, fill="tint") for _, piece in pieces]
    for hole in holes:
        shapes += _mark(hole, view)
    ground = Ground(label_ground(view), kept)
    ground.drawn(shapes)
    named = [(hole_text(hole), _wish(hole, view)) for hole in holes]
    named += [
        (body.thing, named_in(view.room(body.area), body.thing, strong=False, sizes=(LETTERS,)))
        for body in bodies
        if body.thing in under_strips
    ]
    found, lost = labelled(ground, named)
    words = _words(holes, bool(pieces), deck)
    paper = ground_of(view)
    foot = legend_foot(words, view.left, paper.right, foot_of(view))
    more = left_over(lost, view.left, foot + 0.3, paper.right)
    return Drawing(
        name=f"bare-{deck.name}",
        title=f"Plan of the bare deck {deck.name}: holes and strips, seen from above",
        desc=f"Deck {deck.name} from above before anything stands on it; its holes are those of the hole schedule.",
        width_mm=paper.right,
        height_mm=max([paper.bottom, foot + 1, *(label.y + 2.7 for label in more)]),
        shapes=(*shapes, *found, *legend(words, view.left, paper.right, foot_of(view)), *more),
        scale=view.scale,
    )


def hole_text(hole: DeckHole) -> str:
    """`H4 Ø16`, `H2 20 × 290`; the number alone where no size is known, or none is drilled."""
    if hole.size is None:
        return hole.number
    texts = [each.text for each in hole.size.of]
    return f"{hole.number} Ø{texts[0]}" if len(texts) == 1 else f"{hole.number} {' × '.join(texts)}"


def _wish(hole: DeckHole, view: View) -> Wish:
    """From its middle, else from one of its centres."""
    x, y = view.point((hole.x_mm + hole.right_mm) / 2, hole.y_mm)
    centres = [view.point(each.x_mm, hole.y_mm) for each in hole.through]
    return Wish(partial(_around_each, ((x, y), *(each for each in centres if each != (x, y))), hole_text(hole)))


def _around_each(points: tuple[Point, ...], text: str) -> Iterator[Choice]:
    return (choice for point in points for choice in around(point, text))


def _mark(hole: DeckHole, view: View) -> list[Shape]:
    centres = [view.point(each.x_mm, hole.y_mm) for each in hole.through] or [view.point(hole.x_mm, hole.y_mm)]
    radius = max(_LEAST, (hole.diameter_mm or 0.0) / 2 / view.scale)
    shapes: list[Shape] = []
    if hole.kind == FOOT:
        half = _FOOT_MM / 2 / view.scale
        x, y = centres[0]
        shapes.append(Box(x - half, y - half, 2 * half, 2 * half, width_mm=THIN))
    elif hole.to_x_mm is not None and not hole.open:
        half = (hole.diameter_mm or 0.0) / 2
        room = view.room(Rectangle(hole.x_mm - half, hole.y_mm - half, hole.to_x_mm - hole.x_mm + 2 * half, 2 * half))
        shapes.append(boxed(room, width_mm=THIN).replace(corner_mm=round(radius, 2)))
    elif not hole.open:
        rings = (1.4, 0.7) if hole.kind == PANEL else (radius,)
        shapes += [Circle(*centres[0], ring, width_mm=THIN) for ring in rings]
    return [*shapes, *(line for centre in centres for line in _cross(centre, radius + 0.7))]


def _cross(centre: Point, arm: float) -> tuple[Line, Line]:
    x, y = centre
    return Line(x - arm, y, x + arm, y, width_mm=HAIR), Line(x, y - arm, x, y + arm, width_mm=HAIR)


def _words(holes: tuple[DeckHole, ...], strips: bool, deck: Deck) -> dict[str, str]:
    there = {
        "hole": any(hole.kind not in (FOOT, PANEL) for hole in holes),
        "panel hole": any(hole.kind == PANEL for hole in holes),
        "foot": any(hole.kind == FOOT for hole in holes),
        "strip": strips,
        "drop line": bool(deck.drops_mm),
    }
    told = {"hole": "centre of a hole, slot or gap", "panel hole": "hole to suit its jack", "foot": "foot of the deck",
            "strip": "strip on the deck", "drop line": "drop line"}  # fmt: skip
    return {word: told[word] for word, drawn in there.items() if drawn} | DATUM
