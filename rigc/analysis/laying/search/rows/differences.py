"""Corners of things, and by how much each is at least more than each other along x and along y: what follows from one such difference more.

What is settled between things is kept as the longest ways of a graph of differences (Cormen, Leiserson, Rivest and Stein, on systems of difference
constraints; from memory), so that it is known at once whether one more is possible, and from where to where a corner may lie.
"""

from __future__ import annotations

from collections.abc import Sequence

Apart = tuple[int, int, int, int]
"""On an axis (0: x, 1: y) the second corner is at least so much more than the first; the number after the last item is the deck's own corner."""
Either = tuple[tuple[Apart, ...], ...]
"""One of these sets holds."""
Least = list[list[int]]
"""By how much each corner is at least more than each other, on one axis."""
Kept = tuple[Least, Least]
"""The same on both axes."""
_NEVER = -(10**6)


def nothing_kept(corners: int) -> Kept:
    """So many corners that may lie anywhere."""
    across, along = (
        [[0 if one == other else _NEVER for other in range(corners)] for one in range(corners)] for _ in (0, 1)
    )
    return across, along


def copied(kept: Kept) -> Kept:
    """The same, to keep to more than that."""
    return [row[:] for row in kept[0]], [row[:] for row in kept[1]]


def keep(kept: Kept, apart: Apart) -> bool:
    """Keeps to one more difference; whether it is possible."""
    axis, one, other, far = apart
    least = kept[axis]
    if least[one][other] >= far:
        return True
    beyond = least[other]
    if beyond[one] + far > 0:
        return False
    for row in least:
        start = row[one] + far
        if start > row[other]:
            for place, more in enumerate(beyond):
                if start + more > row[place]:
                    row[place] = start + more
    return True


def keep_between(kept: Kept, axis: int, one: int, other: int, low: int, high: int) -> bool:
    """Keeps the second corner from so much to so much more than the first; whether it is possible."""
    return keep(kept, (axis, one, other, low)) and keep(kept, (axis, other, one, -high))


def settled(kept: Kept, asked: Sequence[Either]) -> tuple[tuple[Either, ...] | None, int]:
    """Keeps to all that has one way left; what has more of them, None where something has none; and how many were looked at."""
    looked = 0
    while True:
        changed, left = False, []
        looked += len(asked)
        for either in asked:
            may = []
            for some in either:
                holds = True
                for axis, one, other, far in some:
                    least = kept[axis]
                    if least[other][one] + far > 0:
                        break
                    if least[one][other] < far:
                        holds = False
                else:
                    if holds:
                        break
                    may.append(some)
            else:
                if not may:
                    return None, looked
                if len(may) == 1:
                    if not all(keep(kept, each) for each in may[0]):
                        return None, looked
                    changed = True
                else:
                    left.append(either if len(may) == len(either) else tuple(may))
        if not changed:
            return tuple(left), looked
        asked = left


def far(least: Least, one: int, other: int, more: int) -> int:
    """How far two spots are at least, the other `more` from its corner than the first from its own."""
    low = least[one][other] + more
    if low > 0:
        return low
    high = more - least[other][one]
    return -high if high < 0 else 0


def outside(area: tuple[int, int, int, int], one: int, other: int) -> Either:
    """The other corner, seen from the first, is not inside an open rectangle."""
    left, front, right, rear = area
    return ((0, one, other, right),), ((0, other, one, -left),), ((1, one, other, rear),), ((1, other, one, -front),)
