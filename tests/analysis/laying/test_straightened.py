"""Lines of front edges that are moved as a whole once all stands."""

from __future__ import annotations

import pytest

from laying.small_boards import crowded, dealt, unit
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.rows.straightened import straightened


def _row(*fronts: int, width: int = 4000) -> tuple[Board, Layout]:
    """Units of 40 x 60 mm at 50, 150, 250 mm and so on, worth a hundredth of a length each to stand further to the front."""
    items = tuple(unit(f"u{number}", 400, 600, (), use=1) for number in range(len(fronts)))
    board = Board(width, 2000, 120, (), items, line=3_000)
    at = [(500 + 1000 * number, front, 0) for number, front in enumerate(fronts)]
    return board, Layout(board, at)


def test_lines_that_nearly_meet_become_one_at_the_front() -> None:
    """At 3, 0 and 10 mm: three lines, and 130 tenths of a millimetre. As one line at 0 they cost 3 000 alone."""
    board, layout = _row(30, 0, 100)
    assert layout.cost == 3 * 3_000 + 130
    found = straightened(board, as_it_is(layout))
    assert [front for _, front, _ in found.at] == [0, 0, 0] and found.cost == 3_000


@pytest.mark.parametrize(("front", "together"), [(90, True), (100, True), (110, False)])
def test_lines_meet_that_are_no_further_apart_than_ten_millimetres(front: int, together: bool) -> None:
    """No term pulls these to the front or rear; only that they make two lines costs."""
    board, layout = _row(500, 500 + front)
    still = board.replace(items=tuple(item.replace(use=0) for item in board.items))
    found = straightened(still, as_it_is(Layout(still, layout.at)))
    assert (len({y for _, y, _ in found.at}) == 1) is together


def test_what_is_stated_stays_in_its_line() -> None:
    board, layout = _row(30, 0)
    fixed = board.replace(items=(board.items[0].replace(fixed=(500, 30)), board.items[1]))
    found = straightened(fixed, as_it_is(Layout(fixed, layout.at)))
    assert found.at[0] == (500, 30, 0) and found.at[1][1] == 30


@pytest.mark.parametrize("seed", range(6, 14))
def test_it_is_never_worse_and_counts_as_a_layout_does(seed: int) -> None:
    board = crowded(seed)
    before = search(board, 400)
    after = straightened(board, before)
    layout = Layout(board, list(after.at))
    assert after.rank <= before.rank
    assert before.hard or (layout.hard + layout.broken, layout.missed, layout.cost) == after.rank


def test_where_something_is_in_the_way_all_stays() -> None:
    found = as_it_is(Layout(dealt(1, 3), [(0, 0, 0)] * 3))
    assert found.hard and straightened(dealt(1, 3), found) is found
