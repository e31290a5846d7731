"""Labels of changes -> triangles on a drawing, each beside its change."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from itertools import pairwise

from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import LETTERS, Label, Point, Polygon, Shape

_HEIGHT = {1: 5.6, 2: 7.4, 3: 9.4}  # of the triangle around so many signs, in mm
_INSIDE = 0.7  # from a triangle to the outline in which it stands, in mm
_BEYOND = (4.5, 7.0, 10.0, 14.0, 19.0, 25.0, 32.0)  # from an edge to the middle of a triangle outside of it


def of_room(label: str, here: Room) -> Wish:
    """In a corner of what changed, else outside with a leader to it."""
    return Wish(partial(_around, label, here), sign=partial(sign, label))


def of_line(label: str, points: tuple[Point, ...]) -> Wish:
    """Beside a line with a leader to it, its longest stretches first."""
    return Wish(partial(_along, label, points), sign=partial(sign, label))


def sign(label: str, x: float, y: float) -> tuple[Shape, ...]:
    """A white triangle about a point with the label of a change in it."""
    wide, high = _size(label)
    low = y + high / 2
    outline = Polygon(((x - wide / 2, low), (x, y - high / 2), (x + wide / 2, low)), fill="white")
    return (outline, Label(x, low - 0.6, label, size_mm=LETTERS, anchor="middle", strong=True))


def _size(label: str) -> tuple[float, float]:
    high = _HEIGHT[min(len(label), 3)]
    return high * 1.16, high


def _choice(label: str, at: Point, cost: float, start: Point | None) -> Choice:
    return Choice(*at, label, cost, start, sign_mm=_size(label))


def _around(label: str, here: Room) -> Iterator[Choice]:
    across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
    within = here.wider(-max(_size(label)) / 2 - _INSIDE)
    if within.left <= within.right and within.top <= within.bottom:
        middles = ((within.left + across) / 2, (within.right + across) / 2)
        edges = tuple((x, y) for x in (*middles, across) for y in (within.top, within.bottom))
        for cost, at in enumerate((*_corners(within), *edges, (within.left, down), (within.right, down))):
            yield _choice(label, at, cost / 2, None)
    for by in _BEYOND:
        out = here.wider(by)
        sides = ((across, out.top), (across, out.bottom), (out.right, down), (out.left, down))
        for x, y in (*_corners(out), *sides):
            yield _choice(label, (x, y), 3, _nearest(here, x, y))


def _nearest(here: Room, x: float, y: float) -> Point:
    """The point of a room that is nearest to one outside, a little inward."""
    aside, along = min(0.6, (here.right - here.left) / 2), min(0.6, (here.bottom - here.top) / 2)
    return min(max(x, here.left + aside), here.right - aside), min(max(y, here.top + along), here.bottom - along)


def _corners(room: Room) -> tuple[Point, ...]:
    return (room.right, room.top), (room.left, room.top), (room.right, room.bottom), (room.left, room.bottom)


def _along(label: str, points: tuple[Point, ...]) -> Iterator[Choice]:
    stretches = sorted(pairwise(points), key=lambda ends: -abs(ends[1][0] - ends[0][0]) - abs(ends[1][1] - ends[0][1]))
    for aside in _BEYOND:
        for rank, ((x1, y1), (x2, y2)) in enumerate(stretches):
            upright = abs(y2 - y1) > abs(x2 - x1)
            for part in (0.5, 0.3, 0.7, 0.15, 0.85):
                x, y = x1 + (x2 - x1) * part, y1 + (y2 - y1) * part
                for by in (aside, -aside):
                    yield _choice(label, (x + by, y) if upright else (x, y + by), rank, (x, y))
