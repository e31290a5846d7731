"""What a search starts from, by hand: which comes first, where rows break, and on which ground a row begins. Lengths are tenths of a millimetre."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from rigc.analysis.laying.search.rows.first_layout import _on_one_ground, _order, first_layout


def item(width: int, depth: int, *sockets: tuple[int, int, int], **more: Any) -> Any:
    """An item of one shape; sockets are the way they look (dx, dy) and what their plugs need."""
    looks = [SimpleNamespace(dx=dx, dy=dy, needs=needs) for dx, dy, needs in sockets]
    shapes = [SimpleNamespace(width=width, depth=depth, sockets=looks)] * more.pop("ways", 1)
    return SimpleNamespace(**{"shapes": shapes, "fixed": None, "under": False, "use": 0, **more})


def board(*items: Any, **more: Any) -> Any:
    plain = {"width": 1000, "depth": 600, "step": 10, "apart": 20, "air": 5, "tiers": (), "wishes": ()}
    return SimpleNamespace(items=list(items), **{**plain, **more})


@pytest.mark.parametrize(
    ("width", "place"),
    [
        # beside a there are 405 left: 385 and the 20 apart just go in
        (385, (0, 10)),
        # one more begins the next row, behind b, the deepest with what is behind it: 10 + 150 + 20; 980 - 20 - 386 = 574, on the grid 570
        (386, (570, 180)),
    ],
)
def test_rows_from_the_right(width: int, place: tuple[int, int]) -> None:
    """b first, which is deep; a, of two thirds of that, is not. b at 1000 - 20 - 20 - 300; a leaves 30 + 5 + 20 to its right for a plug:
    660 - 55 - 200 = 405, on the grid 400. Behind a it is 100 + 40 + 5 + 20 = 165 deep, behind b 150 + 20."""
    a = item(200, 100, (1, 0, 30), (0, 1, 40))
    made = board(a, item(300, 150), item(width, 100), item(90, 90, fixed=(500, 400)), item(100, 100, under=True))
    assert first_layout(made) == [(400, 10, 0), (660, 10, 0), (*place, 0), (500, 400, 0), (860, 10, 0)]


def test_what_no_row_takes_stays_on_the_deck() -> None:
    """The second row would begin at 10 + 400 + 20 = 430; of 300 deep, it begins at 600 - 300. The third at 590, and so at 300 too."""
    made = board(item(900, 400), item(900, 300), item(1200, 300))
    assert first_layout(made) == [(60, 10, 0), (60, 300, 0), (0, 300, 0)]


@pytest.mark.parametrize(
    ("y", "depth", "found"),
    [
        (10, 190, 10),  # ends at the front edge of the tier
        (150, 51, 200),  # would cross it
        (10, 191, 300),  # would cross both, one after the other
        (200, 100, 200),  # fills the tier
        (200, 101, 300),  # would cross its rear edge
        (150, 100, 200),  # crosses the front edge, and just fills the tier
        (400, 200, 400),  # behind it
        (250, 351, 250),  # would cross the rear edge, but also leave the deck
    ],
)
def test_a_row_does_not_begin_across_the_edge_of_a_tier(y: int, depth: int, found: int) -> None:
    tier = SimpleNamespace(front=200, rear=300)
    assert _on_one_ground(board(tiers=(tier,)), y, depth) == found


def test_who_comes_first() -> None:
    """Front row and what is to be in reach or near the front edge; then, without a wish, what is used most, the deep ones of one shape a step
    before their like; then the middle row, then the rear one."""
    wished = {
        0: ("row", "rear"),
        1: ("row", "middle"),
        2: ("near_edge", "left"),
        3: ("near_edge", "front"),
        4: ("reach", "free"),
        5: ("row", "front"),
    }
    wishes = [SimpleNamespace(items=(at,), kind=kind, word=word) for at, (kind, word) in wished.items()]
    items = [item(10, 10) for _ in wished]
    items += [
        item(10, 10, use=1),
        item(10, 30),
        item(10, 20),
        item(10, 30, ways=2),
        item(10, 30, under=True),
        item(10, 21),
    ]
    items += [item(10, 10, fixed=(0, 0)), item(10, 10, use=2)]
    # deepest is 30: beyond 20, 21 is deep, 20 itself is not
    assert _order(board(*items, wishes=wishes)) == [3, 4, 5, 13, 6, 7, 11, 2, 8, 9, 10, 1, 0]
