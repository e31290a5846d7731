"""Lines and rooms on paper -> where they meet, cross or run along each other, and which squares they touch. All in mm."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import hypot

from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.shapes import Point

Segment = tuple[float, float, float, float]
"""From x, y to x, y."""

_CELL = 5.0  # the side of the squares by which paper is looked up
_COLUMN = 1 << 16  # from a square's number to that of the one beside it; to the one below it is 1
_BESIDE = 0.05  # so far beside a square a line counts as in it
_NEAR = 0.5  # nearly parallel lines so near each other run along each other, in mm
_FAR = 0.6  # lines so far from each other neither do nor cross, in mm
_Room = tuple[float, float, float, float]


def towards(start: Point, end: Point, way: float) -> Point:
    """The point `way` mm from start towards end; start itself where the two are one."""
    length = hypot(end[0] - start[0], end[1] - start[1])
    part = way / length if length else 0.0
    return (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)


def squares_of(room: _Room) -> list[int]:
    """The squares of paper that a room touches, each by a number of its own."""
    left, top, right, bottom = room
    rows = range(int(top // _CELL), int(bottom // _CELL) + 1)
    first, last = int(left // _CELL) * _COLUMN, int(right // _CELL) * _COLUMN
    return [column + row for column in range(first, last + 1, _COLUMN) for row in rows]


def squares_crossed(segment: Segment) -> list[int]:
    """The squares through which a line may go, and those beside it."""
    x1, y1, x2, y2 = segment
    if abs(x1 - x2) < 0.01 or abs(y1 - y2) < 0.01:
        left, right = (x1, x2) if x1 < x2 else (x2, x1)
        top, bottom = (y1, y2) if y1 < y2 else (y2, y1)
        return squares_of((left - 0.01, top - 0.01, right + 0.01, bottom + 0.01))
    if x1 > x2:
        x1, y1, x2, y2 = x2, y2, x1, y1
    least, most = (y1, y2) if y1 < y2 else (y2, y1)
    slope = (y2 - y1) / (x2 - x1)
    found: list[int] = []
    for column in range(int(x1 // _CELL), int(x2 // _CELL) + 1):
        left, right = column * _CELL - _BESIDE, (column + 1) * _CELL + _BESIDE
        one = y1 + slope * (left - x1) if left > x1 else y1
        other = y1 + slope * (right - x1) if right < x2 else y2
        low, high = (one, other) if one < other else (other, one)
        first = int(max(low - _BESIDE, least) // _CELL)
        last = int(min(high + _BESIDE, most) // _CELL)
        found += range(column * _COLUMN + first, column * _COLUMN + last + 1)
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


def meets_one(room: _Room, others: Iterable[_Room]) -> bool:
    """Whether a room has a part in common with one of the others."""
    left, top, right, bottom = room
    return any(left < x2 and x1 < right and top < y2 and y1 < bottom for x1, y1, x2, y2 in others)


def is_crossed(room: _Room, segments: Sequence[Segment]) -> bool:
    """Whether one of these lines goes into a room."""
    left, top, right, bottom = room
    for segment in segments:
        x1, y1, x2, y2 = segment
        if (
            (x1 >= left or x2 >= left)
            and (x1 <= right or x2 <= right)
            and (y1 >= top or y2 >= top)
            and (y1 <= bottom or y2 <= bottom)
            and _within(segment, room) is not None
        ):
            return True
    return False


def crossed(way: Segment, lines: Iterable[Segment]) -> int:
    """How many of these lines a way crosses, each counted once; -1 where it runs along one of them."""
    x1, y1, x2, y2 = way
    left, right = (x1 - _FAR, x2 + _FAR) if x1 < x2 else (x2 - _FAR, x1 + _FAR)
    top, bottom = (y1 - _FAR, y2 + _FAR) if y1 < y2 else (y2 - _FAR, y1 + _FAR)
    seen: set[Segment] = set()
    count = 0
    for line in lines:
        cx, cy, dx, dy = line
        if (cx < left and dx < left) or (cx > right and dx > right):
            continue
        if (cy < top and dy < top) or (cy > bottom and dy > bottom):
            continue
        if line in seen:
            continue
        seen.add(line)
        met = how_met(way, line)
        if met == ALONG:
            return -1
        count += met
    return count


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
    return any(_distance(*point, other) < _NEAR for point in (one[:2], one[2:])) or any(
        _distance(*point, one) < _NEAR for point in (other[:2], other[2:])
    )


def _distance(x: float, y: float, segment: Segment) -> float:
    x1, y1, x2, y2 = segment
    square = (x2 - x1) ** 2 + (y2 - y1) ** 2
    part = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / square)) if square else 0.0
    return hypot(x - x1 - part * (x2 - x1), y - y1 - part * (y2 - y1))
