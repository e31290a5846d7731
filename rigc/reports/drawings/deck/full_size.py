"""A tile -> its drawing at full size: what stands there, marks to join it to its neighbours, a square to check the print."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline
from rigc.analysis.leads.plugs.plug_bodies import PlugBody
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import name_choices, switches
from rigc.reports.drawings.deck.tiles import OVERLAP, Tile
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.hatching import round_outline
from rigc.reports.drawings.means.label_box import Room, label_box
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.plots.clipping import Frame, clipped
from rigc.reports.drawings.shapes import HAIR, THICK, THIN, Label, Line, Point, Polyline, Shape

SQUARE_MM = 100.0
_EDGE, _HEAD = 2.0, 7.0  # round a tile on its page; its heading


def full_size(
    rig: Rig,
    deck: Deck,
    size: tuple[float, float],
    bodies: tuple[Outline, ...],
    plugs: tuple[PlugBody, ...],
    tile: Tile,
) -> Drawing:
    """One page of the print; plugs are dashed."""
    view = View(1, _EDGE - tile.area.x_mm, _HEAD - (size[1] - tile.area.rear_mm), *size)
    frame = _frame(view, tile.area)
    room = LabelRoom(Room(frame.left, frame.top, frame.right, frame.bottom))
    square, heading = _square(frame, room), _heading(deck, tile)
    shapes: list[Shape] = [*_joins(frame, tile), heading]
    shapes += _line(_closed(view, Rectangle(0, 0, *size).corners), frame, THICK)
    for drop in deck.drops_mm:
        ends = (view.point(0, drop), view.point(size[0], drop))
        shapes += [Polyline(run, "grey", "spaced") for run in clipped(ends, frame)]
    for plug in plugs:
        shapes += _line(_closed(view, plug.corners()), frame, THIN, "dashed")
    shapes += [shape for body in bodies for shape in _body(rig, body, view, frame, room)]
    return Drawing(
        name=f"full-size-{deck.name}-{tile.name.lower()}",
        title=f"Tile {tile.name}",
        desc=_described(deck, bodies, tile),
        width_mm=max(frame.right, label_box(heading).right) + _EDGE,
        height_mm=frame.bottom + _EDGE,
        shapes=(*shapes, *square),
        scale=1,
    )


def _frame(view: View, area: Rectangle) -> Frame:
    room = view.room(area)
    return Frame(room.left, room.top, room.right, room.bottom)


def _body(rig: Rig, body: Outline, view: View, frame: Frame, room: LabelRoom) -> list[Shape]:
    """An outline with its switches, and its name in the part that this tile shows."""
    shapes = _line(_closed(view, body.corners), frame, THICK)
    here = view.room(body.area)
    for dot in switches(rig.units.get(body.thing), rig.places[body.thing], view):
        shapes += _line((*round_outline(dot.x, dot.y, dot.radius), (dot.x + dot.radius, dot.y)), frame, THIN)
        if dot.fill:  # a foot switch, not a knob: a cross where the foot goes
            shapes += _line(((dot.x - dot.radius, dot.y), (dot.x + dot.radius, dot.y)), frame, THIN)
            shapes += _line(((dot.x, dot.y - dot.radius), (dot.x, dot.y + dot.radius)), frame, THIN)
        room.keep_clear(Room(dot.x, dot.y, dot.x, dot.y).wider(dot.radius))
    seen = Room(
        max(here.left, frame.left),
        max(here.top, frame.top),
        min(here.right, frame.right),
        min(here.bottom, frame.bottom),
    )
    if seen.left < seen.right and seen.top < seen.bottom:
        big = [label.replace(size_mm=4.0, strong=True) for label in name_choices(seen, body.thing)]
        label = room.place(big, seen) or room.place(name_choices(seen, body.thing), seen)
        shapes += [label] if label is not None else []
    return shapes


def _square(frame: Frame, room: LabelRoom) -> list[Shape]:
    """The check square in the middle of the tile; its words stand at its upper edge."""
    left = (frame.left + frame.right - SQUARE_MM) / 2
    top = (frame.top + frame.bottom - SQUARE_MM) / 2
    right, bottom = left + SQUARE_MM, top + SQUARE_MM
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    label = Label(left + 2, top - 1, "check: this square is 100 mm wide and 100 mm high", halo=True)
    room.keep(label)
    room.line(corners)
    return [Polyline(corners, "blue", "solid", THIN), label]


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


def _heading(deck: Deck, tile: Tile) -> Label:
    joins = "lay the neighbour's edge on the dotted line, cross on cross"
    return Label(_EDGE, 4.5, f"{deck.name}, tile {tile.name}: {joins}", strong=True)


def _closed(view: View, corners: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(view.point(*corner) for corner in (*corners, corners[0]))


def _line(points: tuple[Point, ...], frame: Frame, width: float, pattern: str = "solid") -> list[Shape]:
    return [Polyline(run, pattern=pattern, width_mm=width) for run in clipped(points, frame)]


def _described(deck: Deck, bodies: tuple[Outline, ...], tile: Tile) -> str:
    seen = [body.thing for body in bodies if min(body.area.overlap(tile.area)) > 0]
    left, front = tile.area.x_mm, tile.area.y_mm
    return (
        f"Deck {deck.name} at full size from x {left:g}, y {front:g} mm on. "
        f"It shows: {', '.join(seen) or 'no unit'}. A square of 100 mm checks the print."
    )
