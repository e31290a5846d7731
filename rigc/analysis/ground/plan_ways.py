"""The ways of leads in plan -> the area that they enclose."""

from __future__ import annotations

Spot = tuple[float, float]


def area_mm2(points: tuple[Spot, ...]) -> float:
    """The area inside a closed polygon; where its way crosses itself, parts that a field meets the other way round count against."""
    ends = zip(points, (*points[1:], *points[:1]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in ends)) / 2
