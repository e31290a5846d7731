"""Convex polygons seen from above -> whether, how far and how near they meet; for outlines that no axis follows. All in mm."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, hypot, radians, sin

Spot = tuple[float, float]
Polygon = tuple[Spot, ...]


def turned(spot: Spot, degrees: float) -> Spot:
    """A point (or a direction) turned counter-clockwise about the origin."""
    along, across = cos(radians(degrees)), sin(radians(degrees))
    return spot[0] * along - spot[1] * across, spot[0] * across + spot[1] * along


def reach(one: Polygon, other: Polygon) -> float:
    """The shortest shift in mm that parts two convex polygons; what is not positive says that they are apart."""
    return min(
        min(here[1] - there[0], there[1] - here[0])
        for axis in (*_normals(one), *_normals(other))
        for here, there in ((_shadow(one, axis), _shadow(other, axis)),)
    )


def gap(one: Polygon, other: Polygon) -> float:
    """The least distance of two convex polygons in mm; 0 where they touch or overlap."""
    if reach(one, other) >= 0:
        return 0.0
    pairs = ((one, other), (other, one))
    return min(_distance(spot, edge) for first, second in pairs for spot in first for edge in _edges(second))


def chord(polygon: Polygon, y: float) -> Spot | None:
    """Where a line along x goes through the inside of a convex polygon: from x to x; None where it does not."""
    found = [
        x1 + (x2 - x1) * (y - y1) / (y2 - y1)
        for (x1, y1), (x2, y2) in _edges(polygon)
        if min(y1, y2) <= y <= max(y1, y2) and y1 != y2
    ]
    inside = min(spot[1] for spot in polygon) < y < max(spot[1] for spot in polygon)
    return (min(found), max(found)) if inside else None


def before(polygon: Polygon, start: Spot, way: Spot, half: float) -> float | None:
    """How far a strip, `half` to each side, runs from `start` along the direction `way` (of length 1) until it meets a polygon.

    Negative where the polygon reaches behind the start; None where the strip passes it by.
    """
    local = [
        ((x - start[0]) * way[0] + (y - start[1]) * way[1], (y - start[1]) * way[0] - (x - start[0]) * way[1])
        for x, y in polygon
    ]
    for sign in (1, -1):
        local = _clipped(local, sign, half)
    return min((along for along, _ in local), default=None)


def crossed(polygon: Polygon, start: Spot, end: Spot) -> bool:
    """Whether a straight stretch goes through the inside of a convex polygon; its edges are free."""
    enters, leaves = 0.0, 1.0
    for (x1, y1), (x2, y2) in _edges(polygon):
        here = (x2 - x1) * (start[1] - y1) - (y2 - y1) * (start[0] - x1)
        there = (x2 - x1) * (end[1] - y1) - (y2 - y1) * (end[0] - x1)
        if here <= 0 and there <= 0:
            return False
        if here < 0:
            enters = max(enters, here / (here - there))
        elif there < 0:
            leaves = min(leaves, here / (here - there))
    return leaves - enters > 1e-9


def _clipped(local: list[Spot], sign: int, half: float) -> list[Spot]:
    kept: list[Spot] = []
    for at, (along, across) in enumerate(local):
        last = local[at - 1]
        here, there = half - sign * across, half - sign * last[1]
        if (here > 0) != (there > 0) and here != there:
            share = there / (there - here)
            kept.append((last[0] + (along - last[0]) * share, last[1] + (across - last[1]) * share))
        if here > 0:
            kept.append((along, across))
    return kept


def _edges(polygon: Polygon) -> Iterator[tuple[Spot, Spot]]:
    return zip(polygon, (*polygon[1:], polygon[0]), strict=True)


def _normals(polygon: Polygon) -> Iterator[Spot]:
    for (x1, y1), (x2, y2) in _edges(polygon):
        length = hypot(x2 - x1, y2 - y1)
        if length:
            yield (y2 - y1) / length, (x1 - x2) / length


def _shadow(polygon: Polygon, axis: Spot) -> Spot:
    across = [x * axis[0] + y * axis[1] for x, y in polygon]
    return min(across), max(across)


def _distance(spot: Spot, edge: tuple[Spot, Spot]) -> float:
    (x1, y1), (x2, y2) = edge
    length = (x2 - x1) ** 2 + (y2 - y1) ** 2
    share = ((spot[0] - x1) * (x2 - x1) + (spot[1] - y1) * (y2 - y1)) / length if length else 0.0
    share = min(max(share, 0.0), 1.0)
    return hypot(spot[0] - x1 - share * (x2 - x1), spot[1] - y1 - share * (y2 - y1))
