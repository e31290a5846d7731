"""A layout settles: fronts into line, whole lines to the middle, and never to what costs more."""

from __future__ import annotations

from itertools import pairwise

import pytest

from laying.small_boards import crowded, dealt, unit
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.known import Known
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.rows.settling import settled

JACKS = (("left", 200), ("right", 200))


def _board(gap: int = 0, centring: int = 0) -> Board:
    items = tuple(unit(f"u{number}", 600, 800, JACKS) for number in range(3))
    return Board(5000, 3000, 120, (), items, step=10, line=3000, gap=gap, centring=centring)


def _settles(board: Board, at: list[tuple[int, int, int]]) -> Layout:
    layout = Layout(board, at)
    found = list(settled(layout, (0, 1, 2)))
    assert all(one.cost >= other.cost for one, other in pairwise(found))
    assert found[-1] == as_it_is(layout)
    assert not layout.hard
    return layout


def test_fronts_go_into_one_line() -> None:
    """Three lines at 30 mm each are one, whichever; nothing else costs anything: 90 -> 30 mm."""
    layout = _settles(_board(), [(200, 1000, 0), (1500, 1130, 0), (3000, 1270, 0)])
    assert len({y for _, y, _ in layout.at}) == 1
    assert layout.cost == 3000


def test_fronts_too_far_apart_stay() -> None:
    """80 mm are within reach of a line (800 tenths), 80.1 mm on a grid of 0.1 mm are not."""
    fine: Board = _board().replace(step=1)
    assert _settles(fine, [(200, 0, 0), (1500, 800, 0), (3000, 1600, 0)]).cost == 3000
    assert _settles(fine, [(200, 0, 0), (1500, 801, 0), (3000, 1602, 0)]).cost == 9000


def test_a_whole_line_goes_to_the_middle() -> None:
    """From 200 to 3700 the middle is 1950; that of a deck of 5000 is 2500, so it goes 550 to the right. No thing alone may: where two even gaps come
    to differ, each length costs 200 times what one off the middle does."""
    layout = _settles(_board(gap=200, centring=1), [(200, 1000, 0), (1650, 1000, 0), (3100, 1000, 0)])
    assert [x for x, *_ in layout.at] == [750, 2200, 3650]
    assert layout.cost == 3000


def test_what_has_no_room_stays_out_of_line() -> None:
    """The gap in the line is as wide as the third, whose plugs need room aside: two lines stay, at 30 mm each."""
    at = [(1000, 500, 0), (2200, 500, 0), (1600, 1300, 0)]
    layout = _settles(_board(), at)
    assert (layout.at, layout.cost) == (at, 6000)


def test_the_same_layout_settles_the_same_way() -> None:
    """On boards with all that the rules may ask of one, and what is fixed stays."""
    for seed in (7, 9, 11):
        board = crowded(seed)
        found = search(board, 1500)
        if found.hard:
            continue
        free = tuple(range(1, len(board.items)))
        ways = []
        for _ in range(2):
            layout = Layout(board, list(found.at))
            ways.append([each.at for each, _ in zip(settled(layout, free), range(600), strict=False)])
            assert layout.at[0] == found.at[0]
            assert (layout.hard, layout.broken) == (0, 0)
            assert layout.missed <= found.missed
            assert layout.cost <= found.cost
            assert layout.cost == Layout(board, list(layout.at)).cost
        assert ways[0] == ways[1]


@pytest.mark.parametrize("seed", range(6, 14))
def test_at_rest_it_is_never_worse_and_counts_as_a_layout_does(seed: int) -> None:
    board = crowded(seed)
    before = search(board, 400)
    after = Known().rest(board, before)
    layout = Layout(board, list(after.at))
    assert after.rank <= before.rank
    assert after.steps == before.steps
    assert before.hard or (layout.hard + layout.broken, layout.missed, layout.cost) == after.rank
    assert Known().rest(board, after).cost == after.cost


def test_where_something_is_in_the_way_nothing_settles() -> None:
    found = as_it_is(Layout(dealt(1, 3), [(0, 0, 0)] * 3))
    assert found.hard and Known().rest(dealt(1, 3), found) is found
