"""By how much hints are missed, on a deck of 300 x 300 mm with thirds of 100 mm, in tenths of a millimetre."""

from __future__ import annotations

import pytest

from laying.small_boards import unit
from rigc.analysis.laying.search.board import Board, Item, Spot, Wish
from rigc.analysis.laying.wishes.wished import _from_box, _gap, missed

BOARD = Board(3000, 3000, 0, (), tuple(unit(name, 500, 500, ()) for name in "abc"))
AWAY = (2500, 2500)


@pytest.mark.parametrize(
    ("wish", "here", "there", "between", "short"),
    [
        (Wish("row", (0,), "front"), (0, 1000), None, None, 0),
        (Wish("row", (0,), "front"), (0, 1010), None, None, 10),
        (Wish("row", (0,), "middle"), (0, 750), None, None, 0),  # its middle lies at 100 mm
        (Wish("row", (0,), "middle"), (0, 700), None, None, 50),
        (Wish("row", (0,), "rear"), (0, 1500), None, None, 0),
        (Wish("row", (0,), "rear"), (0, 1400), None, None, 100),
        (Wish("reach", (0,), "right foot"), (1250, 0), None, None, 0),
        (Wish("reach", (0,), "right foot"), (1200, 0), None, None, 50),
        (Wish("reach", (0,), "left foot"), (1300, 0), None, None, 50),
        (Wish("beside", (0,), "left", (1,)), (0, 0), (500, 50), None, 0),  # 5 mm are still one row
        (Wish("beside", (0,), "left", (1,)), (0, 0), (500, 60), None, 10),
        (Wish("beside", (0,), "left", (1,), 300), (0, 0), (900, 0), None, 100),
        (Wish("beside", (0,), "right", (1,)), (0, 0), (100, 0), None, 600),
        (Wish("beside", (0,), "left", (1,)), (0, 0), (1500, 0), (700, 0), 500),  # another stands between
        (Wish("beside", (0,), "front", (1,)), (0, 0), (0, 500), None, 0),
        (Wish("beside", (0,), "rear", (1,)), (0, 600), (0, 0), None, 0),
        (Wish("beside", (0,), "front", (1,)), (0, 0), (600, 500), None, 101),  # nothing in common in x, by a hair
    ],
)
def test_hints(
    wish: Wish, here: tuple[int, int], there: tuple[int, int] | None, between: tuple[int, int] | None, short: int
) -> None:
    at = [(*(spot or AWAY), 0) for spot in (here, there, between)]
    assert missed(BOARD, wish, at) == short


def stood(item: Item, switches: tuple[Spot, ...] = (), knobs: tuple[Spot, ...] = ()) -> Item:
    """An item in one shape, with these switches and knobs on it."""
    made: Item = item.replace(shapes=(item.shapes[0].replace(switches=switches, pressed=switches, knobs=knobs),))
    return made


SWITCHED = stood(unit("s", 500, 500, ()), ((250, 100),))
KNOBBED = stood(unit("k", 500, 500, ()), (), ((250, 400),))
HUNG = unit("h", 500, 500, (("left", 250), ("rear", 250)), under=True)
PLAYED = Board(3000, 3000, 0, (), (SWITCHED, SWITCHED, KNOBBED, HUNG))


@pytest.mark.parametrize(
    ("wish", "at", "short"),
    [
        # a third of the width is 100 mm; the middle of a body is 25 mm from its left
        (Wish("on_side", (0,), "left"), [(750, 0)], 0),
        (Wish("on_side", (0,), "left"), [(760, 0)], 10),
        (Wish("on_side", (0,), "right"), [(1740, 0)], 10),
        (Wish("on_side", (0,), "middle"), [(740, 0)], 10),
        (Wish("on_side", (0,), "middle"), [(1750, 0)], 0),
        # 60 mm from an edge
        (Wish("near_edge", (0,), "rear"), [(1500, 1900)], 0),
        (Wish("near_edge", (0,), "rear"), [(1500, 1880)], 20),
        (Wish("near_edge", (0,), "front", amount=400), [(1500, 1000)], 0),  # 40 mm are kept free for a heel
        (Wish("near_edge", (0,), "front", amount=400), [(1500, 1010)], 10),
        (Wish("near_edge", (0,), "left"), [(600, 0), (0, 200)], 300),  # 300 of the other body's depth are before it
        (Wish("near_edge", (0,), "front"), [(1500, 300), (1500, 0)], 300),
        (Wish("near_edge", (0,), "rear"), [(1500, 2200), (1500, 2500)], 300),
        (Wish("near_edge", (0,), "right"), [(2200, 0), (2500, 0)], 300),
        # a stride of 500 mm is wider than this deck; half of it to the rear
        (Wish("reach", (0,), "left foot", (1,)), [(0, 0), (500, 0)], 0),
        (Wish("reach", (0,), "left foot", (1,)), [(510, 0), (500, 0)], 10),
        (Wish("reach", (0,), "right foot", (1,)), [(500, 2500), (500, 0)], 0),
        (Wish("reach", (0,), "right foot", (1,)), [(500, 2510), (500, 0)], 10),
        (Wish("stepped", (0, 1)), [(0, 0), (10, 0)], 0),
        (Wish("stepped", (0, 1)), [(30, 0), (10, 0)], 30),  # 20 too far to the right, and a step of the grid
        (Wish("clear", (0,), amount=500), [(0, 0), (300, 400)], 0),  # 30 x 40 mm: 50 mm
        (Wish("clear", (0,), amount=510), [(0, 0), (300, 400)], 10),
        # a knob 25 mm from the left and 40 mm from the front of its body; a hand takes 20 mm, a shoe 70 mm
        (Wish("knobs_free", (2,)), [(0, 2500), (0, 1500), (0, 0)], 0),
        (Wish("knobs_free", (2,)), [(0, 2500), (0, 590), (0, 0)], 410),  # 400 to 690: the switch 290 mm off lacks 41 mm
        (Wish("knobs_free", (2,)), [(440, 400), (2500, 2500), (0, 0)], 249),  # to (690, 500): hypot(440, 100) = 451.2
        (Wish("jacks_look", (3,), "rear"), [], 100),
        (Wish("stands", (3,), "beneath"), [], 0),
        (Wish("stands", (3,), "on"), [], 10),
        (Wish("stands", (0,), "beneath", amount=70), [], 70),
        (Wish("stands", (0,), "on", front=1000, rear=2000), [(0, 990)], 10),
        (Wish("stands", (0,), "on", front=1000, rear=2000), [(0, 1500)], 0),
        # 50 mm between them are together
        (Wish("together", (0, 1, 2)), [(0, 0), (1000, 0), (2000, 0)], 0),
        (Wish("together", (0, 1, 2)), [(0, 0), (1010, 0), (2020, 0)], 20),
        (Wish("away", (0,), others=(1, 2), amount=300), [(0, 0), (700, 0), (0, 600)], 300),  # 200 and 100 too near
        (Wish("away", (0,), others=(1,)), [(0, 0), (2000, 0)], 0),  # 150 mm where nothing is said
        (Wish("away", (0,), others=(1,)), [(0, 0), (1990, 0)], 10),
        (Wish("symmetric", (0,)), [(1250, 0)], 0),
        (Wish("symmetric", (0,)), [(1280, 0)], 20),  # the step of the grid, 10, is let go
        (Wish("symmetric", (0, 1)), [(0, 100), (2500, 90)], 10),
        (Wish("symmetric", (0, 2, 1)), [(0, 0), (2500, 0), (1250, 0)], 0),
    ],
)  # fmt: skip
def test_what_a_player_wishes(wish: Wish, at: list[tuple[int, int]], short: int) -> None:
    away = [(2500, 2500), (0, 2500), (1000, 2500), (0, 0)]
    assert missed(PLAYED, wish, [(*spot, 0) for spot in (*at, *away[len(at) :])]) == short


def test_how_far_a_spot_is_from_a_box_and_two_boxes_from_each_other() -> None:
    """3 right and 4 before: 5; within it, and where both touch or overlap, 0."""
    box = (0, 10, 20, 30)
    assert [_from_box(spot, box) for spot in ((23, 6), (5, 15), (20, 10), (-7, 15), (5, 42))] == [5, 0, 0, 7, 12]
    others = ((23, 34, 30, 40), (20, 10, 30, 30), (5, 15, 6, 16), (-9, 10, -2, 30))
    assert [_gap(box, other) for other in others] == [5, 0, 0, 2]
