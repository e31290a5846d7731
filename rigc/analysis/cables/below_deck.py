"""Two points below the deck and what hangs there -> the shortest way along x and y, round things or beneath them, in tenths of a
millimetre."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from heapq import heappop, heappush
from itertools import pairwise

from rigc.analysis.cables.deck_boxes import Box

Spot = tuple[int, int]
Way = tuple[Spot, ...]
Size = tuple[int, int] | None


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
    return not any(_goes_through(here, there, box) for here, there in pairwise(way) for box in hanging)


def passed(way: Way, hanging: Sequence[Box]) -> tuple[Box, ...]:
    """The boxes beneath which a way goes, each as often as it enters it anew."""
    found: list[Box] = []
    for box in hanging:
        through = [_goes_through(here, there, box) for here, there in pairwise(way)]
        found += [box] * sum(now and not before for before, now in pairwise([False, *through]))
    return tuple(found)


def beneath(way: Way, hanging: Sequence[Box]) -> int | None:
    """What it takes to go down and up again at all boxes that a way passes; None where there is no room beneath one."""
    costs = [box.beneath for box in passed(way, hanging)]
    return None if None in costs else sum(cost for cost in costs if cost is not None)


def length_of(way: Way) -> int:
    """The length of a way along x and y."""
    return sum(abs(x1 - x2) + abs(y1 - y2) for (x1, y1), (x2, y2) in pairwise(way))


def shortest_way(start: Spot, end: Spot, hanging: Sequence[Box], size: Size = None) -> Way | None:
    """The shortest way that goes round the boxes, or beneath those that have room there, and stays on a deck of that size, with
    the fewest bends among equals.

    None if there is none. A shortest way needs no other lines than those through its ends and along the boxes' edges.
    """
    near = _within_reach(start, end, hanging)
    columns = _lines({start[0], end[0]}, (edge for box in near for edge in (box.left, box.right)), size and size[0])
    rows = _lines({start[1], end[1]}, (edge for box in near for edge in (box.front, box.rear)), size and size[1])
    first = columns.index(start[0]), rows.index(start[1])
    far = length_of((start, end))
    queue: list[tuple[int, int, int, Way, tuple[int, int], int, _Inside]] = [
        (far, 0, axis, (start,), first, 0, frozenset()) for axis in (0, 1)
    ]
    done: set[tuple[tuple[int, int], int, _Inside]] = set()
    while queue:
        _, bends, axis, way, at, length, inside = heappop(queue)
        if (at, axis, inside) in done:
            continue
        done.add((at, axis, inside))
        if way[-1] == end:
            return straight(way)
        for turn in (axis, 1 - axis):
            for step in (-1, 1):
                column, row = (at[0] + step, at[1]) if turn == 0 else (at[0], at[1] + step)
                if not (0 <= column < len(columns) and 0 <= row < len(rows)):
                    continue
                spot = columns[column], rows[row]
                under = frozenset(place for place, box in enumerate(near) if _goes_through(way[-1], spot, box))
                entered = [near[place].beneath for place in under - inside]
                if None not in entered:
                    long = length + length_of((way[-1], spot)) + sum(cost for cost in entered if cost is not None)
                    least = long + length_of((spot, end))
                    heappush(queue, (least, bends + (turn != axis), turn, (*way, spot), (column, row), long, under))
    return None


_Inside = frozenset[int]


def _within_reach(start: Spot, end: Spot, hanging: Sequence[Box]) -> list[Box]:
    """The boxes that the best way can come near: it is no longer than the best of those along one lane."""
    known = [
        length_of(way) + cost
        for lane in (start[1], end[1])
        if (cost := beneath(way := lane_way(start, end, lane), hanging)) is not None
    ]
    if not known:
        return list(hanging)
    more = -(-(min(known) - length_of((start, end))) // 2)
    left, right = min(start[0], end[0]) - more, max(start[0], end[0]) + more
    front, rear = min(start[1], end[1]) - more, max(start[1], end[1]) + more
    return [
        box for box in hanging if box.left <= right and box.right >= left and box.front <= rear and box.rear >= front
    ]


def _lines(ends: set[int], edges: Iterable[int], most: int | None) -> list[int]:
    return sorted(ends | {edge for edge in edges if edge >= 0 and (most is None or edge <= most)})


def _in_line(one: Spot, two: Spot, three: Spot) -> bool:
    return one[0] == two[0] == three[0] or one[1] == two[1] == three[1]


def _goes_through(start: Spot, end: Spot, box: Box) -> bool:
    return (
        min(start[0], end[0]) < box.right
        and max(start[0], end[0]) > box.left
        and min(start[1], end[1]) < box.rear
        and max(start[1], end[1]) > box.front
    )
