"""Routes -> what of them decides between ways that are as short, in plain numbers: it stays the same whatever else is known of a lead."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.below_deck import Way
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.deck_boxes import Box, deck_boxes
from rigc.analysis.routes.kept_apart import from_pickup
from rigc.analysis.signal.loading.loading import Loading
from rigc.model.geometry.polygon import Spot
from rigc.model.rig import Rig
from rigc.record import Record


class PlainRoute(Record):
    """A lead's jacks, in mm on its deck, and its route as `Route` tells it, in tenths of a millimetre."""

    mark: str
    signal: str
    deck: str | None
    jacks: tuple[Spot, Spot]
    kind: str
    exits: tuple[tuple[int, int], ...]
    drops: tuple[int | None, ...]
    lane: int | None = None
    more: int = 0
    dip: int = 0
    around: Way = ()


class PlainRoutes(Record):
    """All leads that have a route, those that hear most first (`hearing`, by number: a pickup drives them); the pairs that are tied; and what
    stands on each deck, with its drop lines."""

    all: tuple[PlainRoute, ...]
    hearing: tuple[str, ...]
    tied: tuple[tuple[str, ...], ...]
    decks: dict[str | None, tuple[tuple[Box, ...], tuple[int, ...]]]


def plain_routes(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes, loading: Loading) -> PlainRoutes:
    """Leads that hear most are considered first, else in the order of their numbers."""
    hearing = from_pickup(loading)
    routed = [lead for lead in leads.all if lead.mark in routes.routes and routes.routes[lead.mark].kind]
    routed.sort(key=lambda lead: lead.mark not in hearing)
    return PlainRoutes(
        tuple(_plain(placement, lead, routes.routes[lead.mark]) for lead in routed),
        tuple(hearing),
        tuple(tuple(pair) for pair in rig.lead_wishes.ties),
        {deck: (tuple(each.by_thing.values()), tuple(each.lines)) for deck, each in deck_boxes(rig, placement).items()},
    )


def _plain(placement: Placement, lead: Lead, route: Route) -> PlainRoute:
    start, end = placement.points[lead.start], placement.points[lead.end]
    jacks = (float(start.x_mm), float(start.y_mm)), (float(end.x_mm), float(end.y_mm))
    return PlainRoute(
        lead.mark,
        lead.signal,
        start.deck,
        jacks,
        route.kind,
        route.exits,
        route.drops,
        route.lane,
        route.more,
        route.dip,
        route.around,
    )


COMPUTE = plain_routes
