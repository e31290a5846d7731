"""The search: always the same, never worse for more steps, and within sight of the best there is."""

from __future__ import annotations

import pytest

from laying.exhaustive import shorter_than, total
from laying.rigs_to_place import board_and_rig
from laying.small_boards import dealt
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.least_lengths import least_lengths

WITHIN = 1.05
ENOUGH = {3: 20_000, 4: 20_000, 5: 60_000, 6: 60_000}  # steps by units


def test_the_same_board_gives_the_same_layout() -> None:
    board = dealt(3, 5)
    assert search(board, 700) == search(board, 700)


LONG = 7
"""A board whose exhaustive search takes a minute; it was made, and nothing shorter found."""


SLOW = (2, 3, 6, 10, 11, 14, 15, 18, 19)
"""Boards whose exhaustive search takes more than five seconds."""


def test_more_steps_are_never_worse() -> None:
    board, _, _ = board_and_rig("back-bedroom")
    found = [search(board, effort) for effort in (0, 200, 1500, 2000, 5000)]
    ranks = [(each.hard + each.missed, each.cost) for each in found]
    assert ranks == sorted(ranks, reverse=True)
    assert ranks[-1] < ranks[0]
    assert [each.steps for each in found if not each.hard] == [1500, 2000, 5000]


def test_an_interrupt_gives_the_best_so_far() -> None:
    board = dealt(3, 5)
    told: list[tuple[int, int]] = []

    def watch(done: int, of: int) -> None:
        told.append((done, of))
        if done >= 500:
            raise KeyboardInterrupt

    found = search(board, 700, watch=watch)
    assert told == [(250, 700), (500, 700)]
    assert found.stopped
    assert found.steps == 500
    assert found == search(board, 5_000, watch=watch)


def test_a_stated_thing_never_moves() -> None:
    board = dealt(2, 5)
    stated = board.items[1].replace(fixed=(700, 200), shapes=board.items[1].shapes[:1])
    found = search(board.replace(items=(board.items[0], stated, *board.items[2:])), 3_000)
    assert found.at[1] == (700, 200, 0)


def test_a_full_board_is_filled() -> None:
    """Thirteen things on a board on which chance leaves few layouts, all leads by one drop line."""
    board = dealt(8, 13, turning=False).replace(step=10)
    found = search(board, 16_000)
    assert not found.hard
    assert not Layout(board, list(found.at)).broken


def test_no_layout_beats_the_bound() -> None:
    board, _, _ = board_and_rig("back-bedroom")
    layout = Layout(board, list(search(board, 3000).at))
    lengths = [length for length, *_ in layout.runs()]
    least = least_lengths(board, lengths)
    assert all(bound.length <= length for bound, length in zip(least, lengths, strict=True))
    bounds = dict(zip((link.mark for link in board.links), least, strict=True))
    # marl.out -> millpond.in: flat plugs face each other over 15 + 15 + 2 = 32 mm, their cables leave 8 mm from the faces:
    # 16 mm, both jacks as high and as far back; 16 + 30 mm of slack are below the shortest lead that can be made
    assert (bounds["A4"].length, bounds["A4"].how) == (900, "direct")
    # mill5.o5 -> rotunda.dc: 10 + (33 + 20 + 10) = 73 mm down and up, + 40 mm of slack = 113, rounded up
    assert (bounds["D5"].length, bounds["D5"].how) == (1200, "under")


@pytest.mark.slow
@pytest.mark.parametrize(
    "seed", [pytest.param(seed, marks=pytest.mark.long if seed in SLOW else ()) for seed in range(20) if seed != LONG]
)
def test_small_rigs_come_near_the_best(seed: int) -> None:
    """On a grid of 10 mm and quarter turns; whether something shorter exists is searched for exhaustively.

    On these boards, all of whose leads are audio and have no onward sense, what the search weighs is audio length alone.
    """
    board = dealt(seed, 3 + seed % 4)
    found = search(board, ENOUGH[len(board.items)])
    length = total(board, list(found.at))
    assert (found.hard, found.missed, found.cost) == (0, 0, 100 * length)
    assert shorter_than(board, length / WITHIN) is None
