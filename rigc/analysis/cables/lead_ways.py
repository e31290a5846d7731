"""A route and what hangs there -> all ways in plan that are as short: the order of x and y, and the lane, are free."""

from __future__ import annotations

from rigc.analysis.cables.below_deck import Way, beneath, lane_way, straight
from rigc.analysis.cables.deck_boxes import DeckBoxes
from rigc.analysis.cables.direct_run import free_bends
from rigc.analysis.computations.cable_routes import Route
from rigc.facts.separation import LANE_STEPS


def lead_ways(route: Route, around: DeckBoxes) -> tuple[Way, ...]:
    """The ways from exit to exit of a direct lead, and from drop line to drop line (or end below) of one under the deck.

    There is at least one. The first goes along its own drop line in x and then in y.
    """
    start, end = route.exits
    if route.kind == "direct":
        bends = free_bends((start, end), around) or ((start[0], end[1]), (end[0], start[1]))
        return tuple(dict.fromkeys(straight((start, bend, end)) for bend in bends))
    here, there = ((x, y if drop is None else drop) for (x, y), drop in zip(route.exits, route.drops, strict=True))
    if route.lane is not None:
        return (lane_way(here, there, route.lane),)
    if route.more:
        return (route.around,)
    first, last = here[1], there[1]
    if route.drops[0] is None and route.drops[1] is not None:
        first, last = last, first
    steps = int(LANE_STEPS.value)
    between = [first + round((last - first) * step / steps / 10) * 10 for step in range(1, steps)]
    lanes = dict.fromkeys((first, last, *between))
    ways = dict.fromkeys(lane_way(here, there, lane) for lane in lanes if min(first, last) <= lane <= max(first, last))
    as_short = tuple(way for way in ways if beneath(way, around.hanging) == route.dip)
    return as_short or (route.around or lane_way(here, there, first),)
