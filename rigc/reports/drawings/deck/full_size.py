"""A tile -> its drawing at full size: what stands there, where to drill, marks to join it to its neighbours, rulers to check the print."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import ceil, copysign

from rigc.analysis.deck.placement import Outline
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.plugs.plug_bodies import PlugBody
from rigc.analysis.routes.deck_holes import DeckHole
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import switches
from rigc.reports.drawings.deck.hole_plan import hole_text
from rigc.reports.drawings.deck.tiles import OVERLAP, Tile
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.hatching import round_outline
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import around, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.plots.clipping import Frame, clipped
from rigc.reports.drawings.shapes import (
    HAIR,
    LETTERS,
    MIDDLE_LETTERS,
    THICK,
    THIN,
    Circle,
    Label,
    Line,
    Point,
    Polyline,
    Shape,
    Symbol,
)

RULER = 6.5
"""What a ruler takes beside the picture, at its left and its lower edge, in mm."""

_EDGE = 0.5  # beyond the other two edges


def full_size(
    rig: Rig,
    deck: Deck,
    size: tuple[float, float],
    bodies: tuple[Outline, ...],
    plugs: tuple[PlugBody, ...],
    holes: tuple[DeckHole, ...],
    tile: Tile,
    kept: Kept = NOTHING_KEPT,
) -> Drawing:
    """One page of the print; plugs are dashed. A tile that is turned lies across the page."""
    view = View(1, RULER - tile.area.x_mm, _EDGE - (size[1] - tile.area.rear_mm), *size)
    frame = _frame(view, tile.area)
    shapes: list[Shape] = [*_joins(frame, tile), *_line(_closed(view, Rectangle(0, 0, *size).corners), frame, THICK)]
    for drop in deck.drops_mm:
        ends = (view.point(0, drop), view.point(size[0], drop))
        shapes += [Polyline(run, "grey", "spaced") for run in clipped(ends, frame)]
    for plug in plugs:
        shapes += _line(_closed(view, plug.corners()), frame, THIN, "dashed")
    shapes += [shape for body in bodies for shape in _body(rig, body, view, frame)]
    shapes += [shape for hole in holes for shape in _hole(hole, view, frame)]
    inner = _inner(frame, tile)
    ground = Ground(inner, kept)
    ground.drawn([*shapes, *(dot for body in bodies for dot in _dots(rig, body, view))])
    named = [(hole_text(hole), _number(hole, end)) for hole in holes if (end := _end(hole, view, frame)) is not None]
    named += [
        (body.thing, named_in(seen, body.thing, sizes=(MIDDLE_LETTERS, LETTERS)))
        for body in bodies
        if (seen := _seen(view.room(body.area), inner)) is not None
    ]
    found, _ = labelled(ground, named)  # of the names without room each stands on another tile, and in the tables
    shapes += [*found, *_rulers(frame, tile)]
    width, height = frame.right + _EDGE, frame.bottom + RULER
    if tile.turned:
        shapes = [Symbol("", tuple(shapes), height, 0, 90)]
        width, height = height, width
    return Drawing(
        name=f"full-size-{deck.name}-{tile.name.lower()}",
        title=f"{deck.name}, tile {tile.name} at 1:1",
        desc=_described(deck, bodies, holes, tile),
        width_mm=width,
        height_mm=height,
        shapes=tuple(shapes),
    )


def _frame(view: View, area: Rectangle) -> Frame:
    room = view.room(area)
    return Frame(room.left, room.top, room.right, room.bottom)


def _inner(frame: Frame, tile: Tile) -> Room:
    """Without what the neighbours show too: of two tiles that are joined one is cut there."""
    left, right, rear, front = (OVERLAP if side else 0 for side in (tile.left, tile.right, tile.rear, tile.front))
    return Room(frame.left + left, frame.top + rear, frame.right - right, frame.bottom - front)


def _seen(here: Room, inner: Room) -> Room | None:
    """What a tile shows of a body; None where that is hardly anything."""
    (left, top, right, bottom), (least, highest, most, lowest) = here, inner
    seen = Room(max(left, least), max(top, highest), min(right, most), min(bottom, lowest))
    return seen if seen.right - seen.left >= _LEAST and seen.bottom - seen.top >= _LEAST else None


def _body(rig: Rig, body: Outline, view: View, frame: Frame) -> list[Shape]:
    """An outline with its switches and knobs."""
    shapes = _line(_closed(view, body.corners), frame, THICK)
    for dot in _dots(rig, body, view):
        shapes += _line((*round_outline(dot.x, dot.y, dot.radius), (dot.x + dot.radius, dot.y)), frame, THIN)
        if dot.fill:  # a foot switch, not a knob: a cross where the foot goes
            shapes += _line(((dot.x - dot.radius, dot.y), (dot.x + dot.radius, dot.y)), frame, THIN)
            shapes += _line(((dot.x, dot.y - dot.radius), (dot.x, dot.y + dot.radius)), frame, THIN)
    return shapes


def _dots(rig: Rig, body: Outline, view: View) -> tuple[Circle, ...]:
    return switches(rig.units.get(body.thing), rig.places[body.thing], view)


def _hole(hole: DeckHole, view: View, frame: Frame) -> list[Shape]:
    """A cross at the centre, the circle where the diameter is known; a slot between two crosses.

    What is open anyway has no cross.
    """
    shapes: list[Shape] = []
    radius = (hole.diameter_mm or 0.0) / 2
    ends = [view.point(x, hole.y_mm) for x in dict.fromkeys((hole.x_mm, hole.right_mm))]
    for x, y in ends:
        arm = max(_ARM, radius + 2)
        if not hole.open:
            for line in (((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))):
                shapes += _line(line, frame, HAIR)
        if radius:
            shapes += _line((*round_outline(x, y, radius), (x + radius, y)), frame, THIN)
    if len(ends) > 1:
        shapes += [Polyline(run, pattern="dash-dot", width_mm=THIN) for run in clipped(tuple(ends), frame)]
        for side in (radius, -radius) if radius and not hole.open else ():
            shapes += _line(tuple((x, y + side) for x, y in ends), frame, THIN)
    return shapes


def _end(hole: DeckHole, view: View, frame: Frame) -> Point | None:
    """The end of a hole or slot that this tile shows."""
    ends = (view.point(x, hole.y_mm) for x in (hole.x_mm, hole.right_mm))
    return next((end for end in ends if frame.left < end[0] < frame.right and frame.top < end[1] < frame.bottom), None)


def _number(hole: DeckHole, end: Point) -> Wish:
    """The number of a hole with its diameter, led from its edge."""
    return Wish(partial(_around_ring, end, (hole.diameter_mm or 0.0) / 2, hole_text(hole)))


def _around_ring(end: Point, ring: float, text: str) -> Iterator[Choice]:
    x, y = end
    for choice in around(end, text):
        yield choice._replace(x=choice.x + copysign(ring, choice.x - x), y=choice.y + copysign(ring, choice.y - y))


def _rulers(frame: Frame, tile: Tile) -> list[Shape]:
    """Along the left and the lower edge, outside the picture, in mm of the deck; the tile's name in the corner."""
    name = Label(RULER / 2, frame.bottom + RULER / 2, tile.name, anchor="middle", level="middle", strong=True)
    shapes: list[Shape] = [
        name,
        Line(frame.left, frame.bottom, frame.right, frame.bottom, "blue"),
        Line(frame.left, frame.top, frame.left, frame.bottom, "blue"),
    ]
    for at in _steps(tile.area.x_mm, tile.area.right_mm):
        x, long = frame.left + at - tile.area.x_mm, _tick(at)
        shapes.append(Line(x, frame.bottom, x, frame.bottom + long, width_mm=HAIR))
        if at % 50 == 0 and frame.left + _CLEAR < x < frame.right - _CLEAR:
            shapes.append(Label(x, frame.bottom + long + 0.4, f"{at}", anchor="middle", level="top"))
    for at in _steps(tile.area.y_mm, tile.area.rear_mm):
        y, long = frame.bottom - at + tile.area.y_mm, _tick(at)
        shapes.append(Line(frame.left, y, frame.left - long, y, width_mm=HAIR))
        if at % 50 == 0 and frame.top + _CLEAR < y < frame.bottom - _CLEAR:
            shapes.append(Label(frame.left - long - 0.4, y, f"{at}", anchor="middle", rotation=-90))
    return shapes


_CLEAR = 4.0  # a number of a ruler keeps so far from its ends
_LEAST = 6.0  # of a body a tile shows so much, or it does not name it
_ARM = 4.0  # of the cross at a centre, at least


def _steps(low: float, high: float) -> range:
    """Every 5 mm between two places on the deck."""
    return range(ceil(low / 5) * 5, int(high) + 1, 5)


def _tick(at: int) -> float:
    return 3.2 if at % 50 == 0 else 2.0 if at % 10 == 0 else 1.2


def _joins(frame: Frame, tile: Tile) -> list[Shape]:
    """Where a neighbour overlaps: the line to lay its edge on, and crosses that must meet."""
    shapes: list[Shape] = []
    wanted = (
        (tile.left, frame.left, True, 1),
        (tile.right, frame.right, True, -1),
        (tile.rear, frame.top, False, 1),
        (tile.front, frame.bottom, False, -1),
    )
    for neighbour, edge, upright, inward in wanted:
        if neighbour:
            shapes += _join(frame, edge, upright, inward)
    corners = (
        (frame.left, frame.top),
        (frame.right, frame.top),
        (frame.right, frame.bottom),
        (frame.left, frame.bottom),
    )
    shapes.append(Polyline((*corners, corners[0]), "grey", width_mm=HAIR))
    return shapes


def _join(frame: Frame, edge: float, upright: bool, inward: int) -> list[Shape]:
    line, cross = edge + OVERLAP * inward, edge + OVERLAP / 2 * inward
    low, high = (frame.top, frame.bottom) if upright else (frame.left, frame.right)
    spots = [low + (high - low) * part for part in (0.25, 0.75)]
    drawn: list[tuple[Point, Point]] = [((line, low), (line, high))]
    for spot in spots:
        drawn += [((cross - 3, spot), (cross + 3, spot)), ((cross, spot - 3), (cross, spot + 3))]
    turned = drawn if upright else [((y1, x1), (y2, x2)) for (x1, y1), (x2, y2) in drawn]
    patterns = ("dotted", *("solid",) * 4)
    return [Line(*start, *end, "grey", pattern, THIN) for (start, end), pattern in zip(turned, patterns, strict=True)]


def _closed(view: View, corners: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(view.point(*corner) for corner in (*corners, corners[0]))


def _line(points: tuple[Point, ...], frame: Frame, width: float, pattern: str = "solid") -> list[Shape]:
    return [Polyline(run, pattern=pattern, width_mm=width) for run in clipped(points, frame)]


def _described(deck: Deck, bodies: tuple[Outline, ...], holes: tuple[DeckHole, ...], tile: Tile) -> str:
    seen = [body.thing for body in bodies if min(body.area.overlap(tile.area)) > 0]
    numbers = ", ".join(hole.number for hole in holes)
    left, front = tile.area.x_mm, tile.area.y_mm
    return (
        f"Deck {deck.name} at full size from x {left:g}, y {front:g} mm on. "
        f"It shows: {', '.join(seen) or 'no unit'}{f'; holes {numbers}' if numbers else ''}. "
        f"Rulers of {tile.area.width_mm:g} and {tile.area.depth_mm:g} mm check the print."
    )
