"""Rectangles -> the pairs that may touch, without comparing each with each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import sqrt

from rigc.model.rectangle import Rectangle


def neighbours(rectangles: Sequence[Rectangle], within_mm: float = 0.0) -> list[tuple[int, int]]:
    """The pairs of places in the sequence, lower first and in order, whose rectangles overlap or are nearer than that.

    Each rectangle is filed under the squares of a grid that it covers; only those in one square are compared, so that a
    board of a thousand units costs about ten times one of a hundred.
    """
    squares: dict[tuple[int, int], list[int]] = {}
    side = _side(rectangles)
    for place, rectangle in enumerate(rectangles):
        for square in _covered(rectangle, side, within_mm / 2):
            squares.setdefault(square, []).append(place)
    pairs = {pair for places in squares.values() for pair in combinations(places, 2)}
    return sorted(pair for pair in pairs if min(rectangles[pair[0]].overlap(rectangles[pair[1]])) > -within_mm)


def _side(rectangles: Sequence[Rectangle]) -> float:
    """The side of a square in mm: about one rectangle a square, and never more squares in a row than rectangles."""
    if not rectangles:
        return 1.0
    width = max(each.right_mm for each in rectangles) - min(each.x_mm for each in rectangles)
    depth = max(each.rear_mm for each in rectangles) - min(each.y_mm for each in rectangles)
    return max(sqrt(width * depth / len(rectangles)), width / len(rectangles), depth / len(rectangles), 1.0)


def _covered(rectangle: Rectangle, side: float, further_mm: float) -> Iterator[tuple[int, int]]:
    rows = range(int((rectangle.y_mm - further_mm) // side), int((rectangle.rear_mm + further_mm) // side) + 1)
    columns = range(int((rectangle.x_mm - further_mm) // side), int((rectangle.right_mm + further_mm) // side) + 1)
    return ((column, row) for column in columns for row in rows)
