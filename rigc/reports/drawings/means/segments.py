"""Lines and rooms on paper -> where they meet, cross or run along each other, and which squares they touch. All in mm."""

from __future__ import annotations

from math import hypot

from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.shapes import Point

Segment = tuple[float, float, float, float]
"""From x, y to x, y."""

_CELL = 5.0  # the side of the squares by which paper is looked up
_BESIDE = 0.05  # so far beside a square a line counts as in it
_Room = tuple[float, float, float, float]


def towards(start: Point, end: Point, way: float) -> Point:
    """The point `way` mm from start towards end; start itself where the two are one."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    part = way / length if length else 0.0
    return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)


def squares_of(room: Room) -> list[tuple[int, int]]:
    """The squares of paper that a room touches, by column and row."""
    rows = range(int(room[1] // _CELL), int(room[3] // _CELL) + 1)
    return [(column, row) for column in range(int(room[0] // _CELL), int(room[2] // _CELL) + 1) for row in rows]


def squares_crossed(segment: Segment) -> list[tuple[int, int]]:
    """The squares through which a line may go, and those beside it."""
    x1, y1, x2, y2 = segment
    if abs(x1 - x2) < 0.01 or abs(y1 - y2) < 0.01:
        return squares_of(Room(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).wider(0.01))
    if x1 > x2:
        x1, y1, x2, y2 = x2, y2, x1, y1
    least, most = (y1, y2) if y1 < y2 else (y2, y1)
    slope = (y2 - y1) / (x2 - x1)
    found = []
    for column in range(int(x1 // _CELL), int(x2 // _CELL) + 1):
        left, right = column * _CELL - _BESIDE, (column + 1) * _CELL + _BESIDE
        one = y1 + slope * (left - x1) if left > x1 else y1
        other = y1 + slope * (right - x1) if right < x2 else y2
        low, high = (one, other) if one < other else (other, one)
        first = int(max(low - _BESIDE, least) // _CELL)
        last = int(min(high + _BESIDE, most) // _CELL)
        found += [(column, row) for row in range(first, last + 1)]
    return found


def outside(segment: Segment, covers: list[Room]) -> list[Segment]:
    """What is left of a line outside rooms."""
    spans = [(0.0, 1.0)]
    for hidden in (span for room in covers if (span := _within(segment, room)) is not None):
        spans = [
            part
            for low, high in spans
            for part in ((low, min(high, hidden[0])), (max(low, hidden[1]), high))
            if part[1] - part[0] > 1e-6
        ]
    x1, y1, x2, y2 = segment
    wide, high_ = x2 - x1, y2 - y1
    return [(x1 + wide * low, y1 + high_ * low, x1 + wide * high, y1 + high_ * high) for low, high in spans]


def meets(segment: Segment, room: _Room) -> bool:
    """Whether a line goes into a room."""
    return _within(segment, room) is not None


def _within(segment: Segment, room: _Room) -> tuple[float, float] | None:
    """From which part of a line to which it is in a room (Liang and Barsky); None where it does not go into it."""
    x1, y1, x2, y2 = segment
    left, top, right, bottom = room
    if (x1 if x1 > x2 else x2) < left or (x1 if x1 < x2 else x2) > right:
        return None
    if (y1 if y1 > y2 else y2) < top or (y1 if y1 < y2 else y2) > bottom:
        return None
    low, high = 0.0, 1.0
    for start, way, least, most in ((x1, x2 - x1, left, right), (y1, y2 - y1, top, bottom)):
        if abs(way) < 1e-9:
            if not least < start < most:
                return None
            continue
        one, other = (least - start) / way, (most - start) / way
        low, high = max(low, min(one, other)), min(high, max(one, other))
        if low >= high:
            return None
    return low, high


ALONG = 2
"""What `how_met` says of lines that run along each other."""


def how_met(one: Segment, other: Segment) -> int:
    """0 where two lines have no point in common, 1 where they cross, 2 where one runs along the other."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    rx, ry, sx, sy = bx - ax, by - ay, dx - cx, dy - cy
    turn = rx * sy - ry * sx
    long, wide = hypot(rx, ry), hypot(sx, sy)
    if long < 1e-9 or wide < 1e-9:
        return 0
    if abs(turn) < 0.08 * long * wide:  # nearly parallel
        return ALONG if _near(one, other) else 0
    t = ((cx - ax) * sy - (cy - ay) * sx) / turn
    u = ((cx - ax) * ry - (cy - ay) * rx) / turn
    return int(-1e-6 < t < 1 + 1e-6 and -1e-6 < u < 1 + 1e-6)


def _near(one: Segment, other: Segment) -> bool:
    """Whether nearly parallel lines come within half a millimetre of each other."""
    return any(_distance(*point, other) < 0.5 for point in (one[:2], one[2:])) or any(
        _distance(*point, one) < 0.5 for point in (other[:2], other[2:])
    )


def _distance(x: float, y: float, segment: Segment) -> float:
    x1, y1, x2, y2 = segment
    square = (x2 - x1) ** 2 + (y2 - y1) ** 2
    part = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / square)) if square else 0.0
    return hypot(x - x1 - part * (x2 - x1), y - y1 - part * (y2 - y1))
