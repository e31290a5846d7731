"""Two points below the deck and what hangs there -> the shortest way along x and y, round things or beneath them, in tenths of a
millimetre."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from heapq import heappop, heappush
from itertools import pairwise

from rigc.analysis.leads.lengths.deck_boxes import Box
from rigc.record import Record

Spot = tuple[int, int]
Way = tuple[Spot, ...]
Size = tuple[int, int] | None


class Below(Record):
    """How a lead runs below the deck: its points where it leaves its lane, how much longer that is than the straight way, the boxes
    that it passes beneath, and what going down and up there adds, in tenths of a millimetre."""

    around: Way = ()
    more: int = 0
    beneath: tuple[Box, ...] = ()
    dip: int = 0


def way_below(
    start: Spot,
    end: Spot,
    lane: int | None,
    hanging: Sequence[Box],
    size: Size = None,
    between: Sequence[Box] | None = None,
) -> Below | None:
    """Straight along a lane where nothing hangs in it; else round or beneath what does, whichever is shorter. A stated lane is
    left only where it can't be kept. None if there is no way. `between` are those boxes that reach between the ends and the lane,
    where they are known."""
    if not hanging:
        return Below()
    for each in (start[1], end[1]) if lane is None else (lane,):
        straight = lane_way(start, end, each)
        under = passed(straight, hanging if between is None else between)
        cost = _dip(under)
        if cost == 0 or (cost is not None and lane is not None):
            return Below(beneath=under, dip=cost)
    way = shortest_way(start, end, hanging, size)
    if way is None:
        return None
    under = passed(way, hanging)
    return Below(way, length_of(way) - length_of((start, end)), under, sum(box.beneath or 0 for box in under))


def nearest_lane(start: Spot, end: Spot, lanes: Iterable[int]) -> int | None:
    """The lane that costs least, the front one of two; none for a lead that only goes along y."""
    if start[0] == end[0]:
        return None
    return min(lanes, key=lambda lane: (abs(start[1] - lane) + abs(lane - end[1]), lane), default=None)


def lane_way(start: Spot, end: Spot, lane: int) -> Way:
    """To the lane in y, along it in x, and on in y; points that say nothing new are left out."""
    return straight((start, (start[0], lane), (end[0], lane), end))


def straight(points: Iterable[Spot]) -> Way:
    """The same way without points that stand twice or lie inside a straight stretch."""
    kept: list[Spot] = []
    for point in points:
        if kept and point == kept[-1]:
            continue
        if len(kept) > 1 and _in_line(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return tuple(kept)


def is_free(way: Way, hanging: Sequence[Box]) -> bool:
    """Whether no stretch goes through the inside of a box; edges are free."""
    return not any(box.crossed_by(here, there) for here, there in pairwise(way) for box in hanging)


def passed(way: Way, hanging: Sequence[Box]) -> tuple[Box, ...]:
    """The boxes beneath which a way goes, each as often as it enters it anew."""
    found: list[Box] = []
    xs, ys = [x for x, _ in way], [y for _, y in way]
    left, right, front, rear = min(xs), max(xs), min(ys), max(ys)
    for box in hanging:
        if left >= box.right or right <= box.left or front >= box.rear or rear <= box.front:
            continue
        before = False
        for here, there in pairwise(way):
            now = box.crossed_by(here, there)
            if now and not before:
                found.append(box)
            before = now
    return tuple(found)


def beneath(way: Way, hanging: Sequence[Box]) -> int | None:
    """What it takes to go down and up again at all boxes that a way passes; None where there is no room beneath one."""
    return _dip(passed(way, hanging))


def _dip(boxes: Iterable[Box]) -> int | None:
    cost = 0
    for box in boxes:
        if box.beneath is None:
            return None
        cost += box.beneath
    return cost


def length_of(way: Way) -> int:
    """The length of a way along x and y."""
    (x1, y1), total = way[0], 0
    for x2, y2 in way:
        total += abs(x1 - x2) + abs(y1 - y2)
        x1, y1 = x2, y2
    return total


def shortest_way(start: Spot, end: Spot, hanging: Sequence[Box], size: Size = None) -> Way | None:
    """The shortest way that goes round the boxes, or beneath those that have room there, and stays on a deck of that size, with
    the fewest bends among equals.

    None if there is none. A shortest way needs no other lines than those through its ends and along the boxes' edges.
    """
    far = length_of((start, end))
    most = _along_a_lane(start, end, hanging)
    near = hanging if most is None else _within_reach(start, end, hanging, most - far)
    columns = _lines({start[0], end[0]}, (edge for box in near for edge in (box.left, box.right)), size and size[0])
    rows = _lines({start[1], end[1]}, (edge for box in near for edge in (box.front, box.rear)), size and size[1])
    across, on_column = _masks(columns, [(box.left, box.right) for box in near])
    along, on_row = _masks(rows, [(box.front, box.rear) for box in near])
    first = columns.index(start[0]), rows.index(start[1])
    queue: list[tuple[int, int, int, Way, tuple[int, int], int, _Inside]] = [
        (far, 0, axis, (start,), first, 0, 0) for axis in (0, 1)
    ]
    done: set[tuple[tuple[int, int], int, _Inside]] = set()
    dips: dict[_Inside, int | None] = {}
    while queue:
        _, bends, axis, way, at, length, inside = heappop(queue)
        if (at, axis, inside) in done:
            continue
        done.add((at, axis, inside))
        here = way[-1]
        if here == end:
            return straight(way)
        for turn, step in ((axis, -1), (axis, 1), (1 - axis, -1), (1 - axis, 1)):
            column, row = there = (at[0] + step, at[1]) if turn == 0 else (at[0], at[1] + step)
            if not (0 <= column < len(columns) and 0 <= row < len(rows)):
                continue
            under = (
                across[min(at[0], column)] & on_row[row] if turn == 0 else along[min(at[1], row)] & on_column[column]
            )
            if (there, turn, under) in done:
                continue
            entered = under & ~inside
            if entered not in dips:
                dips[entered] = _entered(entered, near)
            dip = dips[entered]
            if dip is not None:
                spot = columns[column], rows[row]
                long = length + dip + abs(here[0] - spot[0]) + abs(here[1] - spot[1])
                least = long + abs(spot[0] - end[0]) + abs(spot[1] - end[1])
                if most is not None and least > most:
                    continue
                heappush(queue, (least, bends + (turn != axis), turn, (*way, spot), there, long, under))
    return None


_Inside = int
"""A bit for each box beneath which a way is."""


def _masks(lines: list[int], sides: list[tuple[int, int]]) -> tuple[list[_Inside], list[_Inside]]:
    """Which boxes, by their sides on one axis, lie on the stretch from each line to the next, and which on the line itself; edges are free."""

    def bits(start: int, end: int) -> _Inside:
        return sum(1 << bit for bit, (low, high) in enumerate(sides) if start < high and end > low)

    return [bits(here, there) for here, there in pairwise(lines)], [bits(line, line) for line in lines]


def _entered(bits: _Inside, near: Sequence[Box]) -> int | None:
    """What it costs to go down below these boxes and up again; None where there is no room beneath one."""
    if not bits:
        return 0
    return _dip(box for bit, box in enumerate(near) if bits >> bit & 1)


def _along_a_lane(start: Spot, end: Spot, hanging: Sequence[Box]) -> int | None:
    """What the best way along one lane takes; None where nothing goes beneath what hangs in all."""
    known = [
        length_of(way) + cost
        for lane in (start[1], end[1])
        if (cost := beneath(way := lane_way(start, end, lane), hanging)) is not None
    ]
    return min(known, default=None)


def _within_reach(start: Spot, end: Spot, hanging: Sequence[Box], longer: int) -> list[Box]:
    """The boxes that the best way can come near, which is longer than the straight one by no more than that."""
    more = -(-longer // 2)
    left, right = min(start[0], end[0]) - more, max(start[0], end[0]) + more
    front, rear = min(start[1], end[1]) - more, max(start[1], end[1]) + more
    return [
        box for box in hanging if box.left <= right and box.right >= left and box.front <= rear and box.rear >= front
    ]


def _lines(ends: set[int], edges: Iterable[int], most: int | None) -> list[int]:
    return sorted(ends | {edge for edge in edges if edge >= 0 and (most is None or edge <= most)})


def _in_line(one: Spot, two: Spot, three: Spot) -> bool:
    return one[0] == two[0] == three[0] or one[1] == two[1] == three[1]
