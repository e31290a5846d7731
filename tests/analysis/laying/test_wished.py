"""By how much hints are missed, on a deck of 300 x 300 mm with thirds of 100 mm, in tenths of a millimetre."""

from __future__ import annotations

import pytest

from laying.small_boards import unit
from rigc.analysis.laying.search.board import Area, Board, Wish
from rigc.analysis.laying.wished import missed

BOARD = Board(3000, 3000, 0, (), tuple(unit(name, 500, 500, ()) for name in "abc"))
AWAY = (2500, 2500, 3000, 3000)


def box(x: int, y: int) -> Area:
    return x, y, x + 500, y + 500


@pytest.mark.parametrize(
    ("wish", "here", "there", "between", "short"),
    [
        (Wish("row", 0, "front"), (0, 1000), None, None, 0),
        (Wish("row", 0, "front"), (0, 1010), None, None, 10),
        (Wish("row", 0, "middle"), (0, 750), None, None, 0),  # its middle lies at 100 mm
        (Wish("row", 0, "middle"), (0, 700), None, None, 50),
        (Wish("row", 0, "rear"), (0, 1500), None, None, 0),
        (Wish("row", 0, "rear"), (0, 1400), None, None, 100),
        (Wish("reach", 0, "right foot"), (1250, 0), None, None, 0),
        (Wish("reach", 0, "right foot"), (1200, 0), None, None, 50),
        (Wish("reach", 0, "left foot"), (1300, 0), None, None, 50),
        (Wish("beside", 0, "left", 1), (0, 0), (500, 50), None, 0),  # 5 mm are still one row
        (Wish("beside", 0, "left", 1), (0, 0), (500, 60), None, 10),
        (Wish("beside", 0, "left", 1, 300), (0, 0), (900, 0), None, 100),
        (Wish("beside", 0, "right", 1), (0, 0), (100, 0), None, 600),
        (Wish("beside", 0, "left", 1), (0, 0), (1500, 0), (700, 0), 500),  # another stands between
        (Wish("beside", 0, "front", 1), (0, 0), (0, 500), None, 0),
        (Wish("beside", 0, "rear", 1), (0, 600), (0, 0), None, 0),
        (Wish("beside", 0, "front", 1), (0, 0), (600, 500), None, 101),  # nothing in common in x, by a hair
    ],
)
def test_hints(
    wish: Wish, here: tuple[int, int], there: tuple[int, int] | None, between: tuple[int, int] | None, short: int
) -> None:
    boxes = [box(*here), box(*there) if there else AWAY, box(*between) if between else AWAY]
    assert missed(BOARD, wish, boxes) == short
