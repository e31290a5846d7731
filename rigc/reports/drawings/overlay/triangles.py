"""Labels of changes -> triangles on a drawing, each beside its change and clear of all letters."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.shapes import HAIR, LETTERS, Label, Line, Point, Polygon, Shape

_PROXY = "="  # a letter about as wide as high: it holds the room of a triangle
_HEIGHT = {1: 5.6, 2: 7.4, 3: 9.4}  # of the triangle around so many signs, in mm
_LEADER = 5.5  # from this far off on a line leads to what changed, in mm


def triangle(label: str, spots: Iterable[Point], change: Room, room: LabelRoom) -> tuple[Shape, ...]:
    """The triangle at the first of the spots that has room, with a line to what changed where it stands apart; nothing where none has."""
    height = _HEIGHT[min(len(label), 3)]
    choices = (Label(x, y, _PROXY, size_mm=height, anchor="middle", level="middle") for x, y in spots)
    found = room.place(choices)
    if found is None:
        return ()
    drawn = sign(label, found.x, found.y)
    x, y = min(max(found.x, change.left), change.right), min(max(found.y, change.top), change.bottom)
    far = abs(found.x - x) > _LEADER or abs(found.y - y) > _LEADER
    return (*((Line(found.x, found.y, x, y, width_mm=HAIR),) if far else ()), *drawn)


def sign(label: str, x: float, y: float) -> tuple[Shape, ...]:
    """A white triangle about a point with the label of a change in it."""
    height = _HEIGHT[min(len(label), 3)]
    half, low = height * 0.58, y + height / 2
    outline = Polygon(((x - half, low), (x, y - height / 2), (x + half, low)), fill="white")
    return (outline, Label(x, low - 0.6, label, size_mm=LETTERS, anchor="middle", strong=True))


def around(here: Room) -> list[Point]:
    """Within a room at its corners and edges, then outside of it, ever farther."""
    points = []
    for by in (-3.9, 4.5, 9.0, 14.0, 20.0, 27.0):
        left, right, top, bottom = here.left - by, here.right + by, here.top - by, here.bottom + by
        across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
        points += [(right, top), (left, top), (right, bottom), (left, bottom)]
        points += [(across, top), (across, bottom), (right, down), (left, down)]
    return points


def along(points: tuple[Point, ...]) -> list[tuple[Point, Point]]:
    """Beside a line, its longest stretches first: a spot, and the point of the line that it belongs to."""
    stretches = sorted(pairwise(points), key=lambda ends: -abs(ends[1][0] - ends[0][0]) - abs(ends[1][1] - ends[0][1]))
    found = []
    for aside in (0.0, 5.0, -5.0, 10.0, -10.0):
        for (x1, y1), (x2, y2) in stretches:
            upright = abs(y2 - y1) > abs(x2 - x1)
            for part in (0.5, 0.3, 0.7, 0.15, 0.85):
                at = (x1 + (x2 - x1) * part, y1 + (y2 - y1) * part)
                found.append(((at[0] + aside, at[1]) if upright else (at[0], at[1] + aside), at))
    return found
