"""The ways of the leads in plan -> those of one deck, with where each goes through it."""

from __future__ import annotations

from itertools import pairwise

from rigc.analysis.deck.placement import JackPoint, Placement
from rigc.analysis.leads.lead_make import STRAIGHT, LeadMake
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.routes.route_paths import RoutePath, RoutePaths
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.reports.drawings.shapes import Point


class Way(Record):
    """The way of a lead in mm on its deck, from jack to jack; `above` says of each stretch whether it runs on top."""

    mark: str
    signal: str
    jacks: tuple[JackPoint, JackPoint]
    points: tuple[Point, ...]
    above: tuple[bool, ...]
    make: LeadMake = STRAIGHT
    ports: tuple[Port, ...] = ()

    @property
    def shown(self) -> str:
        """Its number, and the signs that set it apart from a straight lead."""
        return f"{self.mark} {self.make.signs}".rstrip()

    @property
    def under(self) -> bool:
        """Whether any of it runs below the deck."""
        return not all(self.above)

    def stretches(self) -> tuple[tuple[bool, tuple[Point, ...]], ...]:
        """Its parts on top (True) and below, in order."""
        parts: list[tuple[bool, list[Point]]] = []
        for (start, end), side in zip(pairwise(self.points), self.above, strict=True):
            if not parts or parts[-1][0] is not side:
                parts.append((side, [start]))
            parts[-1][1].append(end)
        return tuple((side, tuple(points)) for side, points in parts)


def ways(leads: Leads, paths: RoutePaths, placement: Placement, deck: str) -> tuple[Way, ...]:
    """The leads of that deck that have a way, in the order of their numbers."""
    found = ((lead, paths.paths.get(lead.mark)) for lead in leads.all)
    all_ways = (_way(lead, path, placement) for lead, path in found if path is not None)
    return tuple(way for way in all_ways if way.jacks[0].deck == deck)


def _way(lead: Lead, path: RoutePath, placement: Placement) -> Way:
    jacks = (placement.points[lead.start], placement.points[lead.end])
    return Way(lead.mark, lead.signal, jacks, path.points, path.above, lead.make, (lead.start, lead.end))
