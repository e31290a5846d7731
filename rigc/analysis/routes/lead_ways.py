"""A route and what hangs there -> all ways in plan that are as short: the order of x and y, and the lane, are free."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import islice, pairwise

from rigc.analysis.leads.lengths.below_deck import Spot, Way, beneath, lane_way, length_of, straight
from rigc.analysis.leads.lengths.cable_routes import Route
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes
from rigc.analysis.leads.lengths.direct_run import free_bends
from rigc.facts.separation import LANE_STEPS, WAYS_PAST


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
    cost = abs(here[0] - there[0]) + abs(here[1] - there[1]) + route.more + route.dip
    first, last = here[1], there[1]
    if route.drops[0] is None and route.drops[1] is not None:
        first, last = last, first
    lanes = _lanes(first, last)
    ways = dict.fromkeys(lane_way(here, there, lane) for lane in lanes if min(first, last) <= lane <= max(first, last))
    return tuple(_as_short(ways, cost, around.hanging_between(here, there))) or _past(
        here, there, route.around, cost, around.hanging
    )


def _lanes(first: int, last: int) -> tuple[int, ...]:
    """Lanes in y to be tried between two of them, and both themselves."""
    steps = int(LANE_STEPS.value)
    between = (first + round((last - first) * step / steps / 10) * 10 for step in range(1, steps))
    return tuple(dict.fromkeys((first, last, *between)))


@lru_cache(maxsize=256)  # after an edit most leads run as they did
def _past(here: Spot, there: Spot, known: Way, cost: int, hanging: tuple[Box, ...]) -> tuple[Way, ...]:
    """Where something hangs in every lane: the `known` way, and those as short with one stretch in y, or in x, between the ends
    and the edges of what hangs there, or half-way from one to the next."""
    columns = _halved(
        {here[0], there[0], *(x for x, _ in known)}, {x for box in hanging for x in (box.left, box.right)}
    )
    lanes = _halved({here[1], there[1], *(y for _, y in known)}, {y for box in hanging for y in (box.front, box.rear)})
    ways = {known: None}
    (x1, y1), (x2, y2) = here, there
    for column in columns:
        across = abs(x1 - column) + abs(column - x2)
        for lane in lanes:
            if across + abs(y1 - lane) + abs(lane - y2) <= cost:
                ways[straight((here, (column, y1), (column, lane), (x2, lane), there))] = None
                ways[straight((here, (x1, lane), (column, lane), (column, y2), there))] = None
    return tuple(islice(_as_short(ways, cost, hanging), int(WAYS_PAST.value))) or (
        known or lane_way(here, there, here[1]),
    )


def _halved(own: set[int], edges: set[int]) -> list[int]:
    """A lead's own lines and the edges between them, and in each gap the line half-way, in whole millimetres."""
    lines = sorted(own | {edge for edge in edges if min(own) < edge < max(own)})
    return [*lines, *((low + high) // 20 * 10 for low, high in pairwise(lines))]


def _as_short(ways: Iterable[Way], cost: int, hanging: Sequence[Box]) -> Iterator[Way]:
    """Those that cost no more than that, in tenths of a millimetre."""
    for way in ways:
        length = length_of(way) if way else cost + 1
        if length <= cost:
            dip = beneath(way, hanging)
            if dip is not None and length + dip <= cost:
                yield way
