"""A few things by the sides of each other on which they stand: near the best there is, and never worse for it."""

from __future__ import annotations

import pytest

from laying.exhaustive import shorter_than, total
from laying.rigs_to_place import board_and_rig
from laying.small_boards import dealt
from rigc.analysis.laying.chosen_places import searched, usual_effort
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.rows.sides import comparisons


@pytest.mark.parametrize("seed", [0, 2, 5, 6, 8, 9])
def test_nothing_shorter_exists(seed: int) -> None:
    """From a layout in which things are still in each other's way, on a grid of 10 mm."""
    board = dealt(seed, 3 + seed % 3, turning=False)
    assert search(board, 100).hard
    found = search(board, 100, sides=8_000)
    length = total(board, list(found.at))
    assert (found.hard, found.missed, found.cost) == (0, 0, 100 * length)
    assert shorter_than(board, length) is None


def test_a_full_board_is_laid_within_five_percent_of_what_is_proved() -> None:
    """On the users' grid. The solver proves that no layout has less than 940 mm of leads (see `tests/bench/proved.md`, dealt 13 of 6 things);
    all else that the search does comes to 1470 mm after its usual steps."""
    found = search(dealt(13, 6, turning=False).replace(step=10), 1_000, sides=25_000)
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
    found = search(board, 300, sides=2_000)
    assert found.at[1] == (700, 200, 0)
    assert found.steps <= 2_300
    assert search(board, 300, sides=2_000) == found


def test_many_leads_and_drop_lines_are_left_to_the_rest_of_the_search() -> None:
    """A real board of seven things with eleven leads and four drop lines, and a single open thing."""
    board, _, _ = board_and_rig("back-bedroom")
    assert comparisons(board) == 0
    few = dealt(0, 3)
    assert comparisons(few) > 0
    assert comparisons(few.replace(items=(few.items[0], *(each.replace(fixed=(0, 0)) for each in few.items[1:])))) == 0
