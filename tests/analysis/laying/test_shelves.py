"""A crowd is laid without faults at once, and gets fewer steps of search."""

from __future__ import annotations

import pytest

from laying.small_boards import unit
from rigc.analysis.laying.chosen_places import EFFORT, usual_effort
from rigc.analysis.laying.search.board import Board, End, Item, Link
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.rows.first_layout import first_layout


def crowd(count: int) -> tuple[Item, ...]:
    return tuple(unit(f"u{number}", 600, 1000, (("right", 500), ("left", 500))) for number in range(count))


def test_a_crowd_stands_on_shelves_round_what_is_fixed() -> None:
    # with its plugs and half of the air beside each, a unit is 60 + 2 x (15 + 1) = 92 mm wide: 100 mm and more on a grid of
    # 10 mm; 1.2 m take 11 beside each other, 8 rows of 100 mm 80 and more
    board = Board(12_000, 8_400, 0, (), (*crowd(70), unit("stays", 900, 900, (), fixed=(3000, 2500))), air=20, step=100)
    layout = Layout(board, first_layout(board))
    assert layout.faults == 0
    assert layout.at[70] == (3000, 2500, 0)


def test_what_finds_no_room_is_left_out_with_what_it_lacks() -> None:
    board = Board(3_000, 2_200, 0, (), crowd(70), air=20, step=100)
    found = left_out(board, tuple(first_layout(board)))
    # two rows of three at most stand on 300 x 220 mm: 3 x 92 = 276 mm, 2 x 100 = 200 mm
    assert 64 <= len(found) < 70
    assert all(lacking > 0 for lacking in found.values())


@pytest.mark.parametrize(
    ("things", "steps"),
    [
        (1, 600),  # at least
        (2, 2_600),  # one pair
        (6, 39_000),  # 15 pairs
        (7, 54_600),  # 21 pairs
        (8, 3 * EFFORT),
        (40, 3 * EFFORT),
        (80, 3 * EFFORT // 4),
        (400, 3 * EFFORT // 100),
    ],  # without leads; beyond 40 things (40 / n) squared
)
def test_few_things_get_more_steps_and_a_crowd_fewer(things: int, steps: int) -> None:
    assert usual_effort(Board(10_000, 10_000, 0, (), crowd(things))) == steps


def test_leads_make_the_steps_of_few_things_fewer() -> None:
    """Each makes a step longer: seven things with eleven leads get 510,000 / (4 + 11) steps, with five the 21 x 2,600 of their pairs."""
    board = Board(10_000, 10_000, 0, (), crowd(7))
    lead = Link("A1", "audio", End(0), End(1))
    assert usual_effort(board.replace(links=(lead,) * 11)) == 34_000
    assert usual_effort(board.replace(links=(lead,) * 5)) == 54_600


def test_leads_make_the_steps_of_many_things_fewer() -> None:
    """560,000 / (4 + leads), at least 20,000: from 24 leads on."""
    board = Board(10_000, 10_000, 0, (), crowd(20))
    lead = Link("A1", "audio", End(0), End(1))
    steps = [usual_effort(board.replace(links=(lead,) * leads)) for leads in (7, 8, 16, 30, 31, 60)]
    assert steps == [50_909, 46_666, 28_000, 20_000, 20_000, 20_000]


def test_more_things_get_more_steps_by_the_square() -> None:
    """With sixty leads 20,000 x (n / 20) squared: 24 things 28,800, 30 things 45,000; three times as many at most, which 35 pass (61,250)."""
    lead = Link("A1", "audio", End(0), End(1))
    boards = [Board(10_000, 10_000, 0, (), crowd(things), links=(lead,) * 60) for things in (20, 21, 24, 30, 34, 35)]
    assert [usual_effort(board) for board in boards] == [20_000, 22_050, 28_800, 45_000, 57_800, 60_000]
