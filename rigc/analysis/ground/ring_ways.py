"""Ways of leads in plan -> the area that a ring's leads enclose, and the d.c. or mains lead that runs longest beside them."""

from __future__ import annotations

from itertools import pairwise

from rigc.facts.hum import BESIDE_LONG_MM, BESIDE_MM
from rigc.record import Record

Spot = tuple[float, float]


def area_mm2(points: tuple[Spot, ...]) -> float:
    """The area inside a closed polygon; where its way crosses itself, parts that a field meets the other way round count against."""
    ends = zip(points, (*points[1:], *points[:1]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in ends)) / 2


Ways = dict[str, tuple[Spot, ...]]


class Beside(Record):
    """A lead that runs beside a ring: how far along it, and how near at the nearest, in mm."""

    mark: str
    long_mm: float
    near_mm: float


def beside(ring: Ways, others: Ways) -> Beside | None:
    """Of the other leads, the one that runs longest beside one lead of the ring; None where none does for long enough.

    Runs beside several leads of the ring are not added up: where two of its leads lie together, what they pick up cancels.
    """
    runs = (_beside(mark, way, own) for mark, way in others.items() for own in ring.values())
    found = [each for each in runs if each.long_mm > BESIDE_LONG_MM.value]
    return max(found, key=lambda each: (each.long_mm, -each.near_mm), default=None)


def _beside(mark: str, way: tuple[Spot, ...], own: tuple[Spot, ...]) -> Beside:
    runs = [run for here in pairwise(own) for there in pairwise(way) if (run := _run(here, there))]
    return Beside(mark, sum(run[0] for run in runs), min((run[1] for run in runs), default=0.0))


def _run(here: tuple[Spot, Spot], there: tuple[Spot, Spot]) -> tuple[float, float] | None:
    """How far two stretches along one axis run beside each other, and how far apart; None where they do not."""
    for along, across in ((0, 1), (1, 0)):
        if here[0][across] != here[1][across] or there[0][across] != there[1][across]:
            continue
        low = max(min(here[0][along], here[1][along]), min(there[0][along], there[1][along]))
        high = min(max(here[0][along], here[1][along]), max(there[0][along], there[1][along]))
        apart = abs(here[0][across] - there[0][across])
        if high > low and apart <= BESIDE_MM.value:
            return high - low, apart
    return None
