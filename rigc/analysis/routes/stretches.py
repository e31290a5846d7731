"""Stretches of two leads on one side of the deck -> where they cross, at what angle, and how long and near they run side by side.

All in tenths of a millimetre. Leads on different sides of the deck do not meet: the deck, and the air above it, part them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cached_property
from math import atan2, degrees, hypot

from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record

Spot = tuple[float, float]
Stretch = tuple[Spot, Spot]
Bounds = tuple[float, float, float, float]
"""Left, right, front and rear."""


class Side(Record):
    """The stretches of a lead on one side of the deck: along x as (y, from, to), along y as (x, from, to), and askew."""

    along_x: tuple[tuple[float, float, float], ...]
    along_y: tuple[tuple[float, float, float], ...]
    askew: tuple[Stretch, ...]

    @property
    def is_there(self) -> bool:
        """Whether it has any."""
        return bool(self.along_x or self.along_y or self.askew)

    @cached_property
    def bounds(self) -> Bounds:
        """How far they reach; nowhere but at 0 where there are none."""
        xs: list[float] = []
        ys: list[float] = []
        for y, *ends in self.along_x:
            xs += ends
            ys.append(y)
        for x, *ends in self.along_y:
            xs.append(x)
            ys += ends
        for (x1, y1), (x2, y2) in self.askew:
            xs += x1, x2
            ys += y1, y2
        return (min(xs), max(xs), min(ys), max(ys)) if xs else (0.0, 0.0, 0.0, 0.0)


NO_SIDE = Side((), (), ())


class Together(Record):
    """What two leads do beside each other: the angles at which they cross (0 where one lies on the other), and each time that
    they run side by side, how long and how far apart."""

    angles: tuple[float, ...]
    runs: tuple[tuple[float, float], ...]


def side_of(stretches: Iterable[Stretch]) -> Side:
    """Sorts stretches by the way they run; those of no length are left out."""
    along_x, along_y, askew = [], [], []
    for (x1, y1), (x2, y2) in stretches:
        if y1 == y2 and x1 != x2:
            along_x.append((y1, x1, x2) if x1 < x2 else (y1, x2, x1))
        elif x1 == x2 and y1 != y2:
            along_y.append((x1, y1, y2) if y1 < y2 else (x1, y2, y1))
        elif x1 != x2:
            askew.append(((x1, y1), (x2, y2)))
    return Side(tuple(along_x), tuple(along_y), tuple(askew))


def around(sides: Iterable[Side]) -> Rectangle:
    """The rectangle around all stretches, in tenths of a millimetre; of no size where there are none."""
    bounds = [each.bounds for each in sides if each.is_there] or [NO_SIDE.bounds]
    lefts, rights, fronts, rears = zip(*bounds, strict=True)
    left, front = min(lefts), min(fronts)
    return Rectangle(left, front, max(rights) - left, max(rears) - front)


def parallel_runs(one: Side, other: Side, within: float) -> list[tuple[float, float]]:
    """Every two stretches along one axis that run beside each other within that distance: how long, and how far apart."""
    found = []
    for mine, theirs in ((one.along_x, other.along_x), (one.along_y, other.along_y)):
        for at, low, high in mine:
            for there, start, end in theirs:
                if start < high and low < end and -within <= at - there <= within:
                    long = (high if high < end else end) - (low if low > start else start)
                    found.append((long, abs(at - there)))
    return found


def crossings(one: Side, other: Side) -> Iterator[float]:
    """The angle in degrees, up to 90, at each point where two stretches cross; 0 for each two that lie on each other."""
    for mine, theirs in ((one.along_x, other.along_y), (one.along_y, other.along_x)):
        for at, low, high in mine:
            for there, start, end in theirs:
                if low <= there <= high and start <= at <= end:
                    yield 90.0
    yield from (0.0 for _, apart in parallel_runs(one, other, 0) if apart == 0)
    yield from askew_crossings(one, other)


def askew_crossings(one: Side, other: Side) -> Iterator[float]:
    """The angle at each crossing of which one stretch at least follows no axis."""
    for here in one.askew:
        for there in (*_stretches(other), *other.askew):
            yield from _crossing(here, there)
    for there in other.askew:
        for here in _stretches(one):
            yield from _crossing(here, there)


def _stretches(side: Side) -> Iterator[Stretch]:
    yield from (((low, at), (high, at)) for at, low, high in side.along_x)
    yield from (((at, low), (at, high)) for at, low, high in side.along_y)


def _crossing(one: Stretch, other: Stretch) -> Iterator[float]:
    (x1, y1), (x2, y2) = one
    (x3, y3), (x4, y4) = other
    turn = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
    if abs(turn) <= 1e-9 * hypot(x2 - x1, y2 - y1) * hypot(x4 - x3, y4 - y3):
        return
    here = ((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)) / turn
    there = ((x3 - x1) * (y2 - y1) - (y3 - y1) * (x2 - x1)) / turn
    if 0 <= here <= 1 and 0 <= there <= 1:
        angle = degrees(abs(atan2(y2 - y1, x2 - x1) - atan2(y4 - y3, x4 - x3))) % 180
        yield min(angle, 180 - angle)
