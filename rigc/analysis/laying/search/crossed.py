"""The ways of two leads in plan -> how often they cross: at a point that is inside a stretch of each, on one side of the deck."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.leads.lengths.below_deck import Spot

Stretch = tuple[int, int, int]  # the line on which it lies, from where to where
Side = tuple[tuple[Stretch, ...], tuple[Stretch, ...]]  # its stretches along x and along y
Path = tuple[Side, Side]  # over the deck and below it
_NONE: Side = ((), ())
NOWHERE: Path = (_NONE, _NONE)


def over_the_deck(points: Sequence[Spot]) -> Path:
    """The way of a lead over the deck, by its points."""
    return _side(points), _NONE


def through_the_deck(ends: Sequence[tuple[Spot, int]], below: Sequence[Spot]) -> Path:
    """The way of a lead below the deck by its points, each end first along y to its drop line."""
    along = [(x, y, line) if y < line else (x, line, y) for (x, y), line in ends if y != line]
    return ((), tuple(along)), _side(below)


def crossed(one: Path, other: Path) -> int:
    """How often two ways cross."""
    (over, below), (its_over, its_below) = one, other
    count = 0
    if (below[0] and its_below[1]) or (below[1] and its_below[0]):
        count = _met(below, its_below)
    if (over[0] and its_over[1]) or (over[1] and its_over[0]):
        count += _met(over, its_over)
    return count


def _met(one: Side, other: Side) -> int:
    count = 0
    for mine, its in ((one[0], other[1]), (other[0], one[1])):
        for level, left, right in mine:
            for x, low, high in its:
                if left < x < right and low < level < high:
                    count += 1
    return count


def _side(points: Sequence[Spot]) -> Side:
    if not points:
        return _NONE
    across, along = [], []
    x1, y1 = points[0]
    for x2, y2 in points:
        if x1 != x2:
            across.append((y1, x1, x2) if x1 < x2 else (y1, x2, x1))
        elif y1 != y2:
            along.append((x1, y1, y2) if y1 < y2 else (x1, y2, y1))
        x1, y1 = x2, y2
    return tuple(across), tuple(along)
