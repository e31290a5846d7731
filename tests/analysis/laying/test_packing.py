"""Rectangles that are known to fill a rectangle without waste, and ones that can't fit."""

from __future__ import annotations

import random

import pytest

from rigc.analysis.laying.search.packing import Packed, Piece, least_depth, pack

# Test case C1_1 of the strip packing cases of Hopper and Turton, as in the literature (width 20): total area 400, so that
# height 20 is the least there can be, with or without rotation.
C1_1: tuple[Piece, ...] = (
    (2, 12), (7, 12), (8, 6), (3, 6), (3, 5), (5, 5), (3, 12), (3, 7),
    (5, 7), (2, 6), (3, 2), (4, 2), (3, 4), (4, 4), (9, 2), (11, 2),
)  # fmt: skip


def covered(pieces: tuple[Piece, ...], packed: Packed, width: int, depth: int) -> int:
    """The area that is covered; fails where a piece leaves the rectangle or two overlap."""
    assert packed.laid is not None
    assert sorted(number for number, *_ in packed.laid) == list(range(len(pieces)))
    cells: set[tuple[int, int]] = set()
    for number, x, y, turned in packed.laid:
        wide, deep = pieces[number][::-1] if turned else pieces[number]
        assert x >= 0 and y >= 0 and x + wide <= width and y + deep <= depth
        mine = {(column, row) for column in range(x, x + wide) for row in range(y, y + deep)}
        assert not mine & cells
        cells |= mine
    return len(cells)


def cut(width: int, depth: int, pieces: int, seed: int) -> tuple[Piece, ...]:
    """A rectangle cut at random, again and again the largest piece across its longer side: it packs without waste."""
    dice = random.Random(seed)
    made = [(width, depth)]
    while len(made) < pieces:
        made.sort(key=lambda piece: piece[0] * piece[1])
        wide, deep = made.pop()
        at = dice.randint(1, max(wide, deep) - 1)
        made += [(at, deep), (wide - at, deep)] if wide >= deep else [(wide, at), (wide, deep - at)]
    dice.shuffle(made)
    return tuple(made)


@pytest.mark.parametrize("turning", [False, True])
def test_c1_1_has_height_20(turning: bool) -> None:
    assert covered(C1_1, pack(C1_1, 20, 20, 20_000, turning), 20, 20) == 400
    assert pack(C1_1, 20, 19, 20_000, turning) == Packed(None, True, 0)
    least = least_depth(C1_1, 20, 20_000, turning)
    assert least is not None and covered(C1_1, least, 20, 20) == 400


@pytest.mark.parametrize("seed", range(12))
def test_perfect_packings_by_construction(seed: int) -> None:
    pieces = cut(60, 40, 6 + seed % 6, seed)
    assert covered(pieces, pack(pieces, 60, 40, 60_000), 60, 40) == 2400
    few = cut(60, 40, 6, seed + 100)
    assert covered(few, pack(few, 60, 40, 60_000, turning=True), 60, 40) == 2400


def test_what_cannot_fit_is_proved() -> None:
    # Two of 6 x 6 in 10 x 11: the area would do (72 of 110), the sides would not.
    found = pack(((6, 6), (6, 6)), 10, 11, 1000, turning=True)
    assert (found.laid, found.proved) == (None, True)
    assert pack(((6, 6), (6, 6)), 10, 12, 1000).laid is not None


def test_given_up_is_not_proved() -> None:
    pieces = cut(60, 40, 14, 0)
    assert not pack(pieces, 60, 40, 3).proved
