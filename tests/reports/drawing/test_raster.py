"""What is known at once of a place for letters is so: where small squares of paper say that it is taken, a ground or a line is there."""

from __future__ import annotations

import random

import pytest

from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.raster import Raster
from rigc.reports.drawings.means.segments import Segment, meets

PAPER = Room(-3.5, 2.0, 96.5, 62.0)


def box(dice: random.Random) -> Room:
    """Somewhere on the paper, often on whole millimetres."""
    whole = dice.randrange(2)
    x, y = dice.uniform(PAPER.left, PAPER.right - 30), dice.uniform(PAPER.top, PAPER.bottom - 12)
    wide, high = dice.uniform(0, 30), dice.uniform(0, 12)
    if whole:
        x, y, wide, high = (float(round(each * 2) / 2) for each in (x, y, wide, high))
    return Room(max(x, PAPER.left), max(y, PAPER.top), x + wide, y + high)


def line(dice: random.Random) -> Segment:
    """Any, level, upright, or out of the paper."""
    x1, y1, x2, y2 = (dice.uniform(-20, 120) for _ in range(4))
    way = dice.randrange(3)
    return (x1, y1, x1 if way == 1 else x2, y1 if way == 2 else y2)


@pytest.mark.parametrize("seed", range(20))
def test_what_is_full_is_so(seed: int) -> None:
    dice = random.Random(seed)
    raster, rooms, lines = Raster(PAPER), [box(dice) for _ in range(6)], [line(dice) for _ in range(4)]
    for room in rooms:
        raster.close(room)
    for each in lines:
        raster.cross(*each)
    full = 0
    for _ in range(300):
        letters = box(dice)
        if raster.is_full(*letters):
            full += 1
            assert any(map(letters.meets, rooms)) or any(meets(each, letters) for each in lines)
    assert full > 20


def test_what_is_far_within_is_known() -> None:
    """The square from 10 to 11 mm across and down: a ground that holds it is met by all that covers a part of it; a line through it only by
    what covers it whole."""
    raster = Raster(Room(0.0, 0.0, 40.0, 40.0))
    raster.close(Room(10.0, 10.0, 11.0, 11.0))
    assert raster.is_full(10.9, 10.9, 12.0, 12.0)
    assert not raster.is_full(11.0, 11.0, 12.0, 12.0)
    raster.cross(20.5, 0.0, 20.5, 40.0)
    assert raster.is_full(19.9, 19.9, 21.1, 21.1)
    assert not raster.is_full(20.2, 19.9, 21.1, 21.1)
