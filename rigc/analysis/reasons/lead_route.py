"""How long the way of a lead is: `A14.route`."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from rigc.analysis.cables.lead_ends import LeadEnd, Obstacle, lead_ends
from rigc.analysis.computations.cable_routes import CableRoutes, Route
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.reasons.inputs import derived, ours, placed, stated
from rigc.diagnostics.figures import millimetres, plain
from rigc.facts.leads import PASSAGE_MM
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.traced.reason import NOT_KNOWN, Input, Reason

_SOURCE = "arithmetic on stated places; the route model is common practice, no source"
_OVER = "over the deck: the differences in x, y and height of both ends"
_UNDER = (
    "under the deck: across in x, along y from drop line to drop line (through a stated lane), and what it costs to go "
    "round what hangs there, or beneath it (its height down and up); an end on top adds the passage, the height of its jack and the thickness of the deck"
)


def lead_route(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> Iterator[Reason]:
    """One reason for each lead that stays on the board; one without a way says why."""
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is None:
            continue
        ends = lead_ends(rig, placement, lead)
        if route.length is None or isinstance(ends, Obstacle):
            why = f"for want of {route.reason}" if route.missing else route.reason
            inputs = (placed(lead.mark, f"{lead.start} -> {lead.end}", lead.span),)
            yield Reason(f"{lead.mark}.route", NOT_KNOWN, "mm", why, inputs, "a lead needs a way", _SOURCE)
        else:
            yield _routed(rig, lead, route, ends, route.length)


def _routed(rig: Rig, lead: Lead, route: Route, ends: tuple[LeadEnd, LeadEnd], length: int) -> Reason:
    over = route.kind == "direct"
    terms = _over(ends) if over else _under(rig, route, ends)
    value = millimetres(length)
    inputs = [*_exits(lead, route), *_run(lead)]
    for end in ends:
        if end.above is not None and (over or end.on_top):
            inputs.append(derived(f"{end.port} up", millimetres(end.above), "mm", f"{end.port}.height"))
    if not over:
        inputs += _below(rig, lead, route, ends)
    formula = f"{' + '.join(terms)} = {value}"
    return Reason(f"{lead.mark}.route", value, "mm", formula, tuple(inputs), _OVER if over else _UNDER, _SOURCE)


def _over(ends: tuple[LeadEnd, LeadEnd]) -> list[str]:
    start, end = ends
    return [_apart(start.x, end.x), _apart(start.y, end.y), _apart(start.above or 0, end.above or 0)]


def _under(rig: Rig, route: Route, ends: tuple[LeadEnd, LeadEnd]) -> list[str]:
    stops = [y for y in (ends[0].y, route.drops[0], route.lane, route.drops[1], ends[1].y) if y is not None]
    along = [_apart(here, there) for here, there in pairwise(stops)]
    round_it = [millimetres(route.more)] if route.more else []
    down = [millimetres(route.dip)] if route.dip else []
    return [_apart(ends[0].x, ends[1].x), *along, *round_it, *(_through(rig, end) for end in ends), *down]


def _through(rig: Rig, end: LeadEnd) -> str:
    passage = plain(PASSAGE_MM.value)
    thickness = rig.decks[end.deck or ""].thickness_mm
    if not end.on_top or thickness is None:
        return passage
    return f"({passage} + {millimetres(end.above or 0)} + {plain(thickness.value)})"


def _apart(here: int, there: int) -> str:
    return f"|{millimetres(here)} − {millimetres(there)}|"


def _exits(lead: Lead, route: Route) -> list[Input]:
    points = [f"{millimetres(x)}, {millimetres(y)}" for x, y in route.exits]
    ends = zip("ab", points, (lead.start, lead.end), strict=True)
    return [derived(f"leaves {port} at", point, "mm", f"{lead.mark}.exit.{end}") for end, point, port in ends]


def _run(lead: Lead) -> list[Input]:
    return [] if lead.run is None else [placed("stated run", lead.run, lead.span)]


def _below(rig: Rig, lead: Lead, route: Route, ends: tuple[LeadEnd, LeadEnd]) -> list[Input]:
    drops = zip("ab", route.drops, strict=True)
    found = [
        derived(f"drop line at end {end}", millimetres(line), "mm", f"{lead.mark}.drop.{end}")
        for end, line in drops
        if line is not None
    ]
    if route.lane is not None:
        found.append(placed(f"lane of {lead.signal} leads", millimetres(route.lane), lead.span, "mm"))
    found.append(ours(PASSAGE_MM))
    for name in dict.fromkeys(route.beneath):
        found.append(stated(f"height of {name}, passed beneath", _height(rig, name)))
    if any(end.on_top for end in ends):
        deck = rig.decks[ends[0].deck or ""]
        found.append(stated(f"thickness of {deck.name}", deck.thickness_mm))
    return found


def _height(rig: Rig, name: str) -> Quantity | None:
    thing = rig.things[name]
    return thing.height_mm if isinstance(thing, Thing) else None


REASONS = lead_route
