"""Crossings of leads with sound and those of power, as a term of what a layout costs: worked on a board of two leads."""

from __future__ import annotations

import pytest

from laying.rigs_to_place import board_and_rig, by_hand
from laying.small_boards import shape
from rigc.analysis.laying.search.board import Board, End, Item, Link
from rigc.analysis.laying.search.crossed import Path, crossed, over_the_deck, through_the_deck
from rigc.analysis.laying.search.layout import Layout

FLAT, UPRIGHT = through_the_deck((), ((0, 50), (100, 50))), through_the_deck((), ((40, 0), (40, 90)))


@pytest.mark.parametrize(
    ("one", "other", "count"),
    [
        (FLAT, UPRIGHT, 1),
        (UPRIGHT, FLAT, 1),
        (FLAT, through_the_deck((), ((40, 50), (40, 90))), 0),  # ends on it
        (FLAT, through_the_deck((), ((40, 0), (40, 50))), 0),
        (FLAT, through_the_deck((), ((0, 0), (0, 90))), 0),  # meets its end
        (FLAT, through_the_deck((), ((100, 0), (100, 90))), 0),
        (FLAT, through_the_deck((), ((60, 50), (140, 50))), 0),  # lies along it
        (FLAT, over_the_deck(((40, 0), (40, 90))), 0),  # over the deck, the other below
        (FLAT, through_the_deck((), ((40, 0), (40, 90), (60, 90), (60, 10))), 2),
    ],
)
def test_points_inside_both(one: Path, other: Path, count: int) -> None:
    assert crossed(one, other) == count


def box(name: str, *jacks: tuple[str, int]) -> Item:
    return Item(name, (shape(400, 400, jacks, 0),), 500)


def board(crossing: int) -> Board:
    """Sound goes from left to right, power from the rear to what stands before it; drop lines at 60, 130 and 180 mm."""
    items = (
        box("one", ("right", 200)),
        box("two", ("left", 200)),
        box("mill", ("front", 200)),
        box("lamp", ("rear", 200)),
    )
    links = (
        Link("A1", "audio", End(0, 0), End(1, 0), onward=False, run="under"),
        Link("D1", "dc", End(2, 0), End(3, 0), share=10, onward=False, run="under"),
    )
    return Board(3000, 2400, 120, (600, 1300, 1800), items, links, crossing=crossing, step=10)


@pytest.mark.parametrize(("x", "crossings"), [(1000, 1), (2400, 0)])
def test_what_a_crossing_costs(x: int, crossings: int) -> None:
    """A1 leaves at (48, 110) and (192, 120), goes down at 130 and across below from x = 48 to 192. D1 leaves mill at y = 192 and goes down
    at 180, lamp at 48 and goes down at 60, both 20 to the right of their corners: at x = 120 it crosses A1, at 260 it does not."""
    at = [(0, 900, 0), (2000, 1000, 0), (x, 2000, 0), (x, 0, 0)]
    layout = Layout(board(200), at)
    assert (layout.crossings, layout.cost - Layout(board(0), at).cost) == (crossings, 200 * crossings)


def test_after_a_change_crossings_are_those_of_a_layout_made_anew() -> None:
    made, _, _ = board_and_rig("back-bedroom")
    layout = Layout(made, by_hand("back-bedroom"))
    assert (
        layout.cost - made.crossing * layout.crossings == Layout(made.replace(crossing=0), by_hand("back-bedroom")).cost
    )
