"""Footprints: overlaps, and parts of a thing that turn with it."""

from __future__ import annotations

import pytest

from rigc.model.geometry.rectangle import Rectangle

BODY = (70, 120)  # width and depth of the thing that turns
PART = Rectangle(5, 10, 25, 100)  # 40 mm are left at its right, 10 mm at its rear


@pytest.mark.parametrize(
    ("turned", "where"),
    [
        (0, Rectangle(5, 10, 25, 100)),
        # the rear comes to the left: 120 − 110 = 10 from the left, what was the left edge is in front
        (90, Rectangle(10, 5, 100, 25)),
        # 70 − 30 = 40 from the left, 120 − 110 = 10 from the front
        (180, Rectangle(40, 10, 25, 100)),
        # the front comes to the left: 10 from the left; what was the right edge is in front: 70 − 30 = 40
        (270, Rectangle(10, 40, 100, 25)),
    ],
)
def test_a_part_turns_counter_clockwise_with_its_thing(turned: int, where: Rectangle) -> None:
    assert PART.turned_within(*BODY, turned) == where


def test_four_quarters_are_none() -> None:
    there = PART
    for width, depth in (BODY, BODY[::-1], BODY, BODY[::-1]):
        there = there.turned_within(width, depth, 90)
    assert there == PART


def test_overlap_and_gap() -> None:
    here = Rectangle(0, 0, 70, 120)
    assert here.overlap(Rectangle(60, 100, 70, 120)) == (10, 20)
    assert here.shared_mm2(Rectangle(60, 100, 70, 120)) == 200
    assert here.overlap(Rectangle(75, 0, 10, 10)) == (-5, 10)  # a gap of 5
    assert here.shared_mm2(Rectangle(75, 0, 10, 10)) == 0
    assert here.overlap(Rectangle(70, 0, 10, 10))[0] == 0  # they touch
