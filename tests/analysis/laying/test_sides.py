"""A few things by the sides of each other on which they stand: near the best there is, and never worse for it."""

from __future__ import annotations

import pytest

from laying.exhaustive import shorter_than, total
from laying.rigs_to_place import board_and_rig
from laying.small_boards import dealt
from rigc.analysis.laying.chosen_places import searched, usual_effort
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.rows.sides import Sides


def bettered(board: Board, steps: int) -> Found:
    """What a short search finds, bettered by the sides of each other on which all stand."""
    ground = Ground(board)
    begun = search(board, 0)
    sides, done = Sides(FreeRoom(ground), begun), 0
    for each in sides.run():
        done += each
        if done >= steps:
            break
    return sides.found.replace(steps=done)  # type: ignore[no-any-return]


@pytest.mark.parametrize("seed", [0, 2, 5, 6, 8, 9])
def test_nothing_shorter_exists(seed: int) -> None:
    """From a layout in which things are still in each other's way, on a grid of 10 mm."""
    board = dealt(seed, 3 + seed % 3, turning=False)
    assert search(board, 0).hard
    found = bettered(board, 3_000)
    length = total(board, list(found.at))
    assert (found.hard, found.missed, found.cost) == (0, 0, 100 * length)
    assert shorter_than(board, length) is None


def test_all_ways_of_a_few_things_are_gone_through() -> None:
    """Four things are loose at once, and no way is left after a few steps."""
    assert bettered(dealt(21, 4, turning=False).replace(step=10), 100_000).steps < 10_000


def test_a_full_board_is_laid_within_five_percent_of_what_is_proved() -> None:
    """On the users' grid, with the usual steps. The solver proves that no layout has less than 940 mm of leads (see `tests/bench/proved.md`, dealt 13)."""
    found = searched(dealt(13, 6, turning=False).replace(step=10), None)
    assert not found.hard
    assert found.cost <= 1.05 * 940_000


def test_more_steps_are_never_worse() -> None:
    board = dealt(36, 4, turning=False)
    usual = usual_effort(board)
    found = [searched(board, effort) for effort in (usual // 2, usual, usual + 1, 2 * usual, None)]
    costs = [each.rank for each in found[:4]]
    assert costs == sorted(costs, reverse=True)
    assert found[4].rank <= found[1].rank


def test_what_is_stated_stays_and_the_same_board_gives_the_same_layout() -> None:
    board = dealt(2, 5, turning=False)
    stated = board.items[1].replace(fixed=(700, 200))
    board = board.replace(items=(board.items[0], stated, *board.items[2:]))
    found = bettered(board, 2_000)
    assert found.at[1] == (700, 200, 0)
    assert bettered(board, 2_000) == found


def test_two_stated_things_in_each_others_way_do_not_keep_the_rest_from_a_place() -> None:
    """They lie one on the other, and so it is whatever else stands where: that is told of the places, and is no fault of the layout."""
    board = dealt(2, 5, turning=False)
    stated = [item.replace(fixed=(700, 200)) for item in board.items[:2]]
    board = board.replace(items=(*stated, *board.items[2:]))
    found = bettered(board, 4_000)
    assert not found.hard


@pytest.mark.parametrize("example", ["back-bedroom", "harbour-keys", "tide-line"])
def test_a_real_board_is_bettered(example: str) -> None:
    """With up to thirteen leads, four drop lines, rails and balance."""
    board, _, _ = board_and_rig(example)
    begun = search(board, 1_500)
    assert not begun.hard
    sides, done = Sides(FreeRoom(Ground(board)), begun), 0
    for each in sides.run():
        done += each
        if done >= 8_000:
            break
    assert sides.found.hard == 0
    assert sides.found.cost < begun.cost
