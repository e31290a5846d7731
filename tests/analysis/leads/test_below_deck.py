"""Detours below the deck against all ways on the grid of a small deck (networkx: Dijkstra on every point of it)."""

from __future__ import annotations

from itertools import pairwise, product
from random import Random

import networkx
import pytest

from rigc.analysis.leads.lengths.below_deck import beneath, is_free, lane_way, length_of, shortest_way, straight
from rigc.analysis.leads.lengths.deck_boxes import Box

WIDE, DEEP = 24, 16


def box(left: int, front: int, right: int, rear: int) -> Box:
    return Box("low", left, front, right, rear, True)


def decks(count: int) -> list[tuple[tuple[int, int], tuple[int, int], list[Box]]]:
    """Random small decks: two ends, and two to six low boxes."""
    source, found = Random(7), []
    for _ in range(count):
        boxes = []
        for _ in range(source.randint(2, 6)):
            left, front = source.randrange(WIDE), source.randrange(DEEP)
            boxes.append(
                box(left, front, min(left + source.randint(2, 9), WIDE), min(front + source.randint(2, 9), DEEP))
            )
        start, end = ((source.randint(0, WIDE), source.randint(0, DEEP)) for _ in range(2))
        found.append((start, end, boxes))
    return found


def on_grid(boxes: list[Box]) -> networkx.Graph:
    """Every point of the deck, joined to its neighbours where the step between goes through no box."""
    graph = networkx.Graph()
    for x, y in product(range(WIDE + 1), range(DEEP + 1)):
        for there in ((x + 1, y), (x, y + 1)):
            if there[0] <= WIDE and there[1] <= DEEP and not inside(((x + there[0]) / 2, (y + there[1]) / 2), boxes):
                graph.add_edge((x, y), there)
    return graph


def inside(spot: tuple[float, float], boxes: list[Box]) -> bool:
    return any(each.left < spot[0] < each.right and each.front < spot[1] < each.rear for each in boxes)


def test_detours_are_as_short_as_can_be() -> None:
    longer = closed = 0
    for start, end, boxes in decks(250):
        way, graph = shortest_way(start, end, boxes, (WIDE, DEEP)), on_grid(boxes)
        known = start in graph and end in graph and networkx.has_path(graph, start, end)
        if start == end and not inside(start, boxes):
            known = True
        if not known:
            closed += 1
            assert way is None or start == end
            continue
        assert way is not None and way[0] == start and way[-1] == end
        assert all(here[0] == there[0] or here[1] == there[1] for here, there in pairwise(way))
        assert is_free(way, boxes)
        best = 0 if start == end else networkx.shortest_path_length(graph, start, end)
        assert length_of(way) == best
        longer += best > length_of((start, end))
    assert longer > 10 and closed > 10  # there were detours, and ends that are closed in


def test_the_fewest_bends_among_equals() -> None:
    # From (0, 0) to (10, 10) round a box in the lower right: along y first has one bend, stairs have more.
    way = shortest_way((0, 0), (10, 10), [box(2, -2, 12, 8)])
    assert way == ((0, 0), (0, 10), (10, 10))


def test_a_detour_by_hand() -> None:
    # Straight across, a box 6 deep in the way: its front edge is 2 away, its rear edge 4.
    assert shortest_way((0, 5), (20, 5), [box(8, 3, 12, 9)]) == ((0, 5), (0, 3), (20, 3), (20, 5))


def test_a_deck_that_ends_where_the_short_way_would_be() -> None:
    # The box reaches to the deck's front edge and 3 beyond: only the way behind is left.
    assert shortest_way((0, 5), (20, 5), [box(8, -3, 12, 9)], (20, 16)) == ((0, 5), (0, 9), (20, 9), (20, 5))


@pytest.mark.parametrize(
    ("lane", "way"),
    [
        (5, ((0, 0), (0, 5), (9, 5), (9, 20))),
        (0, ((0, 0), (9, 0), (9, 20))),
        (20, ((0, 0), (0, 20), (9, 20))),
        (-5, ((0, 0), (0, -5), (9, -5), (9, 20))),
    ],
)
def test_a_lane(lane: int, way: tuple[tuple[int, int], ...]) -> None:
    assert lane_way((0, 0), (9, 20), lane) == way


def test_a_way_without_needless_points() -> None:
    assert straight(((0, 0), (0, 0), (5, 0), (9, 0), (9, 4))) == ((0, 0), (9, 0), (9, 4))


def test_round_or_beneath_whichever_is_shorter() -> None:
    """The same decks, where a lead passes beneath each box at a price: Dijkstra on the grid of points, each once for every
    set of boxes that one may be beneath (an edge into a box costs its price)."""
    prices, passes = Random(11), 0
    for start, end, boxes in decks(60):
        priced = [each.replace(beneath=prices.choice((None, 2, 5, 9))) for each in boxes[:3]]
        way, best = shortest_way(start, end, priced, (WIDE, DEEP)), _on_states(start, end, priced)
        if best is None:
            assert way is None or start == end
            continue
        assert way is not None
        dip = beneath(way, priced)
        assert dip is not None and length_of(way) + dip == best
        passes += dip > 0
    assert passes > 5


def _on_states(start: tuple[int, int], end: tuple[int, int], boxes: list[Box]) -> int | None:
    graph: networkx.DiGraph = networkx.DiGraph()
    insides = [
        frozenset(place for place in range(len(boxes)) if number >> place & 1) for number in range(2 ** len(boxes))
    ]
    for x, y in product(range(WIDE + 1), range(DEEP + 1)):
        for there in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
            if 0 <= there[0] <= WIDE and 0 <= there[1] <= DEEP:
                middle = ((x + there[0]) / 2, (y + there[1]) / 2)
                under = frozenset(place for place, each in enumerate(boxes) if inside(middle, [each]))
                for before in insides:
                    entered = [boxes[place].beneath for place in under - before]
                    if None not in entered:
                        cost = 1 + sum(price for price in entered if price is not None)
                        graph.add_edge(((x, y), before), (there, under), weight=cost)
    if (start, frozenset()) not in graph:
        return None
    lengths = networkx.single_source_dijkstra_path_length(graph, (start, frozenset()))
    found = [length for (spot, _), length in lengths.items() if spot == end]
    return min(found, default=None)
