"""An outline -> the parallel lines that hatch it, as plain geometry: a printer's pattern fills differ, lines do not."""

from __future__ import annotations

from math import ceil, cos, floor, pi, sin

from rigc.reports.drawings.shapes import Point

GAP = 1.6
"""Between two hatching lines, in mm."""

_ROOT = 0.5**0.5
_SIDES = 48  # of a circle that is hatched


def hatching(outline: tuple[Point, ...], falling: bool = False) -> tuple[tuple[Point, Point], ...]:
    """Segments at 45 degrees (rising to the right, or `falling`) inside a closed outline, by the even-odd rule.

    All hatching of one drawing lies on one lattice, so that two areas that touch run through.
    """
    turned = [_turned(point, falling) for point in outline]
    heights = [v for _, v in turned]
    first, last = ceil(min(heights) / GAP), floor(max(heights) / GAP)
    return tuple(
        (_back(start, row * GAP, falling), _back(end, row * GAP, falling))
        for row in range(first, last + 1)
        for start, end in _inside(turned, row * GAP)
        if end - start > 0.05
    )


def round_outline(x: float, y: float, radius: float) -> tuple[Point, ...]:
    """A circle as a polygon, for hatching."""
    return tuple(
        (x + radius * cos(2 * pi * side / _SIDES), y + radius * sin(2 * pi * side / _SIDES)) for side in range(_SIDES)
    )


def _inside(outline: list[Point], height: float) -> list[Point]:
    crossings = sorted(
        a + (height - b) / (d - b) * (c - a)
        for (a, b), (c, d) in zip(outline, [*outline[1:], outline[0]], strict=True)
        if (b <= height) != (d <= height)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=True))


def _turned(point: Point, falling: bool) -> Point:
    x, y = point
    return ((x + y) * _ROOT, (y - x) * _ROOT) if falling else ((x - y) * _ROOT, (x + y) * _ROOT)


def _back(u: float, v: float, falling: bool) -> Point:
    return ((u - v) * _ROOT, (u + v) * _ROOT) if falling else ((u + v) * _ROOT, (v - u) * _ROOT)
