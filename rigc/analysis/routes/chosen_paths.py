"""Plain routes -> the way of every lead in plan: of the ways that are as short, those that together cross and neighbour least badly."""

from __future__ import annotations

from itertools import pairwise

from rigc.analysis.leads.lengths.below_deck import Way
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes
from rigc.analysis.routes.lead_ways import lead_ways
from rigc.analysis.routes.plain_routes import PlainRoute, PlainRoutes
from rigc.analysis.routes.stretches import Side, side_of
from rigc.analysis.routes.way_choice import chosen_ways
from rigc.analysis.routes.way_costs import LeadSides, way_costs
from rigc.facts.separation import EXACT_LEADS
from rigc.model.geometry.polygon import Spot
from rigc.record import Record


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

    def side(self, above: bool) -> Side:
        """Its stretches over the deck or below it, in tenths of a millimetre."""
        stretches = zip(pairwise(self.points), self.above, strict=True)
        return side_of(tuple((_tenths(start), _tenths(end)) for (start, end), over in stretches if over is above))


class ChosenPaths(Record):
    """The way of each lead that has a route, by its number."""

    paths: dict[str, RoutePath]


def chosen_paths(plain: PlainRoutes) -> ChosenPaths:
    """Weighs all leads against each other."""
    boxes = {deck: DeckBoxes(*each) for deck, each in plain.decks.items()}
    found = [_paths(route, boxes[route.deck]) for route in plain.all]
    sides = [_sides(route, paths) for route, paths in zip(plain.all, found, strict=True)]
    costs = way_costs(sides, frozenset(plain.hearing), frozenset(map(frozenset, plain.tied)))
    chosen = chosen_ways([len(paths) for paths in found], costs, int(EXACT_LEADS.value))
    return ChosenPaths({paths[way].mark: paths[way] for paths, way in zip(found, chosen, strict=True)})


def _sides(route: PlainRoute, paths: tuple[RoutePath, ...]) -> LeadSides:
    return LeadSides(route, tuple((path.side(True), path.side(False)) for path in paths))


def _paths(route: PlainRoute, around: DeckBoxes) -> tuple[RoutePath, ...]:
    ways = lead_ways(route, around)
    return tuple(_path(route, way, len(ways)) for way in ways)


def _path(route: PlainRoute, way: Way, count: int) -> RoutePath:
    """The jack, its exit, the way between, and the same at the other end."""
    over = route.kind == "direct"
    start, end = ([jack, exit_point] for jack, exit_point in _ends(route))
    points = [*start, *((x / 10, y / 10) for x, y in way), *end[::-1]]
    on_top = [over or drop is not None for drop in route.drops]
    above = [on_top[0]] * 2 + [over] * (len(way) - 1) + [on_top[1]] * 2
    kept: list[Spot] = [points[0]]
    sides: list[bool] = []
    for point, side in zip(points[1:], above, strict=True):
        if point != kept[-1]:
            kept.append(point)
            sides.append(side)
    return RoutePath(route.mark, tuple(kept), tuple(sides), count)


def _ends(route: PlainRoute) -> list[tuple[Spot, Spot]]:
    exits = [(x / 10, y / 10) for x, y in route.exits]
    return list(zip(route.jacks, exits, strict=True))


def _tenths(spot: Spot) -> Spot:
    return round(spot[0] * 10), round(spot[1] * 10)


COMPUTE = chosen_paths
