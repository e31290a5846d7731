"""Labels find their places: none over another, within their ground, off lines where they can."""

from __future__ import annotations

import pytest

from rigc.reports.drawings.means.label_box import Room, label_box
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import Label

GROUND = Room(0, 0, 60, 30)


def test_the_first_place_that_is_free() -> None:
    room = LabelRoom(GROUND)
    places = [Label(10, 10, "A01"), Label(10, 20, "A01")]
    assert room.place(places) == places[0]
    assert room.place(places) == places[1]
    assert room.place(places) is None


def test_within_the_ground_or_a_part_of_it() -> None:
    room = LabelRoom(GROUND)
    assert room.place([Label(58, 10, "A01")]) is None
    assert room.place([Label(10, 10, "A01")], within=Room(0, 12, 60, 30)) is None


def test_off_a_line_rather_than_first() -> None:
    room = LabelRoom(GROUND)
    room.line([(0, 9), (60, 9)])
    assert room.place([Label(10, 10, "A01"), Label(10, 20, "A01")]) == Label(10, 20, "A01")
    assert room.place([Label(40, 10, "A02")]) == Label(40, 10, "A02")


def test_kept_clear() -> None:
    room = LabelRoom(GROUND)
    room.keep_clear(Room(0, 0, 60, 15))
    assert room.place([Label(10, 10, "A01"), Label(10, 25, "A01")]) == Label(10, 25, "A01")


def test_box_of_a_turned_label() -> None:
    """Turned to read upwards, its width runs up the paper."""
    wide = text_width("A01", 2.5)
    box = label_box(Label(10, 20, "A01", anchor="middle", level="middle", rotation=-90))
    assert (box.right - box.left, box.bottom - box.top) == pytest.approx((2.5, wide))
    assert ((box.left + box.right) / 2, (box.top + box.bottom) / 2) == pytest.approx((10, 20))
