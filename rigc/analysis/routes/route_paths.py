"""Chosen paths -> the way of every lead in plan, and how it is told: `A14.path`."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.routes.chosen_paths import ChosenPaths, RoutePath
from rigc.diagnostics.figures import nearest_tenth
from rigc.record import Record
from rigc.traced.figure import Answer
from rigc.traced.given import mentioned
from rigc.traced.reason import PRACTICE


class RoutePaths(Record):
    """The way of each lead that has a route, by its number, and where it is told to run."""

    paths: dict[str, RoutePath]
    told: dict[str, Answer]


def route_paths(leads: Leads, routes: CableRoutes, chosen: ChosenPaths) -> RoutePaths:
    """In the order of the leads' numbers."""
    paths = chosen.paths
    ordered = [lead for lead in leads.all if lead.mark in paths]
    return RoutePaths(
        {lead.mark: paths[lead.mark] for lead in ordered},
        {lead.mark: _told(lead, paths[lead.mark], routes.routes[lead.mark]) for lead in ordered},
    )


def _told(lead: Lead, path: RoutePath, route: Route) -> Answer:
    ways = "the only way as short" if path.ways == 1 else f"of {path.ways} ways that are as short"
    return Answer(
        f"{lead.mark}.path",
        " ".join(f"({nearest_tenth(x)}, {nearest_tenth(y)})" for x, y in path.points),
        ways,
        mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span),
        *route.told,
        rule="from jack to jack in plan; of the ways that are as short those that together cross and neighbour least badly",
        source=PRACTICE,
        unit="mm",
        label=f"{lead.mark} runs through",
    )


COMPUTE = route_paths
