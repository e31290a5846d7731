"""Routes and placement -> the way of a lead in plan, as points in mm, from jack to jack."""

from __future__ import annotations

from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.leads import Lead
from rigc.analysis.computations.placement import Placement

Spot = tuple[float, float]


def plan_way(lead: Lead, routes: CableRoutes, placement: Placement) -> tuple[Spot, ...] | None:
    """Jack, exit, the bends between, exit, jack; None for a lead without a route, as a stage lead is.

    A direct lead bends once. One under the deck goes to its own drop line, along it in x, and on in y.
    """
    route = routes.routes.get(lead.mark)
    ends = [placement.point(port) for port in (lead.start, lead.end)]
    if route is None or not route.kind or ends[0] is None or ends[1] is None:
        return None
    (x1, y1), (x2, y2) = ((x / 10, y / 10) for x, y in route.exits)
    bends: list[Spot] = [(x1, y2)]
    if route.kind == "under":
        first, last = route.drops
        turn = y1 if first is None else first / 10
        if first is None and last is not None:
            turn = last / 10
        bends = [(x1, turn), (x2, turn)]
        if last is not None:
            bends.append((x2, last / 10))
    points = [(ends[0].x_mm, ends[0].y_mm), (x1, y1), *bends, (x2, y2), (ends[1].x_mm, ends[1].y_mm)]
    return tuple(point for at, point in enumerate(points) if at == 0 or point != points[at - 1])


def area_mm2(points: tuple[Spot, ...]) -> float:
    """The area inside a closed polygon; where its way crosses itself, parts that a field meets the other way round count against."""
    ends = zip(points, (*points[1:], *points[:1]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in ends)) / 2
