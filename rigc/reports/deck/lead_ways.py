"""Routes -> the ways of the leads over and under a deck as points on it, in mm."""

from __future__ import annotations

from rigc.analysis.computations.cable_routes import CableRoutes, Route
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import JackPoint, Placement
from rigc.record import Record
from rigc.reports.shapes import Point


class Way(Record):
    """The way of a lead between its two jacks. `exits` are where it leaves its plugs; where an end stands on top and the
    lead runs `under` the deck, it goes through it at the first or last of `points`. `lane` is the number of the first
    point of the stretch that runs in x.
    """

    mark: str
    signal: str
    under: bool
    jacks: tuple[JackPoint, JackPoint]
    exits: tuple[Point, Point]
    points: tuple[Point, ...]
    passages: tuple[Point, ...]
    lane: int | None


def ways(leads: Leads, routes: CableRoutes, placement: Placement, deck: str) -> tuple[Way, ...]:
    """The leads of that deck that have a way, in the order of their numbers."""
    return tuple(way for lead in leads.all if (way := _way(lead, routes.routes.get(lead.mark), placement, deck)))


def _way(lead: Lead, route: Route | None, placement: Placement, deck: str) -> Way | None:
    start, end = placement.point(lead.start), placement.point(lead.end)
    if route is None or not route.kind or start is None or end is None or start.deck != deck:
        return None
    (x1, y1), (x2, y2) = exits = tuple((x / 10, y / 10) for x, y in route.exits)
    if route.kind == "direct":
        points = ((x1, y1), (x2, y1), (x2, y2)) if start.dy else ((x1, y1), (x1, y2), (x2, y2))
        return Way(lead.mark, lead.signal, False, (start, end), exits, points, (), 0 if start.dy else 1)
    first, last = (None if drop is None else drop / 10 for drop in route.drops)
    passages = tuple((x, drop) for x, drop in ((x1, first), (x2, last)) if drop is not None)
    lane = next((drop for drop in (first, last) if drop is not None), y1)
    ends = (x1, y1 if first is None else first), (x2, y2 if last is None else last)
    points = (ends[0], (x1, lane), (x2, lane), ends[1])
    return Way(lead.mark, lead.signal, True, (start, end), exits, points, passages, 1)
