"""Routes -> the way of every lead in plan: of the ways that are as short, those that together cross and neighbour least badly: `A14.path`."""

from __future__ import annotations

from functools import cached_property, partial
from itertools import pairwise

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.below_deck import Way
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes, deck_boxes
from rigc.analysis.routes.kept_apart import from_pickup
from rigc.analysis.routes.lead_ways import lead_ways
from rigc.analysis.routes.stretches import NO_SIDE, Side, Stretch, side_of
from rigc.analysis.routes.way_choice import chosen_ways
from rigc.analysis.routes.way_costs import LeadSides, way_costs
from rigc.analysis.signal.loading.loading import Loading
from rigc.diagnostics.figures import nearest_tenth
from rigc.facts.separation import EXACT_LEADS
from rigc.model.geometry.polygon import Spot
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Answer, Basis
from rigc.traced.given import mentioned
from rigc.traced.reason import PRACTICE


class RoutePath(Record):
    """The way of one lead in plan, from jack to jack, as points in mm; `above` says of each stretch whether it runs over
    the deck (else below it). `ways` is how many equally short ones it had to choose from."""

    mark: str
    points: tuple[Spot, ...]
    above: tuple[bool, ...]
    ways: int

    @property
    def passages(self) -> tuple[Spot, ...]:
        """Where it goes through the deck, along it."""
        turns = enumerate(pairwise(self.above), 1)
        return tuple(self.points[at] for at, (before, after) in turns if before != after)

    @cached_property
    def sides(self) -> tuple[Side, Side]:
        """Its stretches over the deck and below it, in tenths of a millimetre."""
        over: list[Stretch] = []
        below: list[Stretch] = []
        ends = [(round(x * 10), round(y * 10)) for x, y in self.points]
        for stretch, is_over in zip(pairwise(ends), self.above, strict=True):
            (over if is_over else below).append(stretch)
        return side_of(over) if over else NO_SIDE, side_of(below) if below else NO_SIDE


class RoutePaths(Record):
    """The way of each lead that has a route, by its number, and where it is told to run."""

    paths: dict[str, RoutePath]
    told: dict[str, Answer]


def route_paths(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes, loading: Loading) -> RoutePaths:
    """Leads that hear most are considered first."""
    boxes = deck_boxes(rig, placement)
    hearing = from_pickup(loading)
    routed = [lead for lead in leads.all if lead.mark in routes.routes and routes.routes[lead.mark].kind]
    routed.sort(key=lambda lead: lead.mark not in hearing)  # stable: else in the order of their numbers
    found = [_paths(placement, lead, routes.routes[lead.mark], boxes) for lead in routed]
    sides = [_sides(lead, paths) for lead, paths in zip(routed, found, strict=True)]
    costs = way_costs(sides, frozenset(hearing), _tied(rig))
    chosen = chosen_ways([len(paths) for paths in found], costs, int(EXACT_LEADS.value))
    paths = {path.mark: path for path in (paths[way] for paths, way in zip(found, chosen, strict=True))}
    ordered = [lead for lead in leads.all if lead.mark in paths]
    return RoutePaths(
        {lead.mark: paths[lead.mark] for lead in ordered},
        {lead.mark: _told(lead, paths[lead.mark], routes.routes[lead.mark]) for lead in ordered},
    )


def _told(lead: Lead, path: RoutePath, route: Route) -> Answer:
    ways = "the only way as short" if path.ways == 1 else f"of {path.ways} ways that are as short"
    return Answer(
        f"{lead.mark}.path",
        lambda: " ".join(f"({nearest_tenth(x)}, {nearest_tenth(y)})" for x, y in path.points),
        ways,
        partial(_joins, lead),
        *route.told,
        rule="from jack to jack in plan; of the ways that are as short those that together cross and neighbour least badly",
        source=PRACTICE,
        unit="mm",
        label=f"{lead.mark} runs through",
    )


def _joins(lead: Lead) -> tuple[Basis, ...]:
    return (mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span),)


def _tied(rig: Rig) -> frozenset[frozenset[str]]:
    return frozenset(frozenset(pair) for pair in rig.lead_wishes.ties)


def _sides(lead: Lead, paths: tuple[RoutePath, ...]) -> LeadSides:
    return LeadSides(lead, tuple(path.sides for path in paths))


def _paths(placement: Placement, lead: Lead, route: Route, boxes: dict[str | None, DeckBoxes]) -> tuple[RoutePath, ...]:
    around = boxes[placement.points[lead.start].deck]
    ways, ends = lead_ways(route, around), _ends(placement, lead, route)
    return tuple(_path(lead, route, way, ends, len(ways)) for way in ways)


_Ends = tuple[tuple[Spot, Spot], tuple[Spot, Spot]]
"""Of each end the jack and its exit, in mm."""


def _path(lead: Lead, route: Route, way: Way, ends: _Ends, count: int) -> RoutePath:
    """The jack, its exit, the way between, and the same at the other end."""
    over = route.kind == "direct"
    (start, start_exit), (end, end_exit) = ends
    points = [start_exit, *[(x / 10, y / 10) for x, y in way], end_exit, end]
    on_top = [over or drop is not None for drop in route.drops]
    above = [on_top[0]] * 2 + [over] * (len(way) - 1) + [on_top[1]] * 2
    kept: list[Spot] = [start]
    sides: list[bool] = []
    for point, side in zip(points, above, strict=True):
        if point != kept[-1]:
            kept.append(point)
            sides.append(side)
    return RoutePath(lead.mark, tuple(kept), tuple(sides), count)


def _ends(placement: Placement, lead: Lead, route: Route) -> _Ends:
    start, end = placement.points[lead.start], placement.points[lead.end]
    (x1, y1), (x2, y2) = route.exits
    return ((start.x_mm, start.y_mm), (x1 / 10, y1 / 10)), ((end.x_mm, end.y_mm), (x2 / 10, y2 / 10))


COMPUTE = route_paths
