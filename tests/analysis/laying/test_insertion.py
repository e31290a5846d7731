"""Where a thing goes in: no place that costs more than is allowed, and whether there is none or only none so cheap."""

from __future__ import annotations

from math import inf

from laying.small_boards import dealt
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.insertion import Insertion
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice


def test_nothing_dearer_than_is_allowed() -> None:
    board = dealt(3, 5, turning=False)
    at, standing, way = list(search(board, 1500).at), {0, 1, 2, 3}, (((4, 0, 0, 0),),)

    def best(most: float) -> list[int] | None:
        found = Insertion(FreeRoom(Ground(board)), Dice(1)).best(way, at, standing, 0.0, 1, most)
        return None if found is None else [cost for cost, _ in found]

    found = best(inf)
    assert found
    least = found[0]
    assert best(least) == [least]  # exactly as much
    assert best(least + 1) == [least]
    assert best(0) == []  # room, but none for nothing


def test_no_room() -> None:
    board = dealt(3, 5, turning=False)
    found = search(board, 1500)
    full = board.replace(kept_free=((0, 0, board.width, board.depth),))
    insertion = Insertion(FreeRoom(Ground(full)), Dice(1))
    assert insertion.best((((4, 0, 0, 0),),), list(found.at), {0, 1, 2, 3}, 0.0, 1) is None


def test_a_cost_is_measured_no_further_than_it_counts() -> None:
    """Moving a thing: with what it costs as the limit the cost is the same, with less it is told as more than the limit."""
    board = dealt(3, 5, turning=False)
    found = search(board, 1500)
    layout = Layout(board, list(found.at))
    costs = set()
    for item, (x, y, shape) in enumerate(found.at):
        changes = [(item, x + 100, y, shape)]
        _, _, at = layout.faults_with(changes)
        cost, broken = layout.cost_with(at, changes)
        assert layout.cost_with(at, changes, cost) == (cost, broken)
        assert layout.cost_with(at, changes, cost - 1)[0] > cost - 1
        costs.add(cost)
    assert len(costs) > 1
