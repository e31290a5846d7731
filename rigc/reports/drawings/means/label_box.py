"""A label -> the room that its letters take on paper."""

from __future__ import annotations

from math import cos, radians, sin
from typing import NamedTuple

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import Label

_START = {"start": 0.0, "middle": 0.5, "end": 1.0}
_DROP = {"baseline": 0.0, "middle": 0.5, "top": 1.0}


class Room(NamedTuple):
    """An upright rectangle on paper, in mm. A tuple, because the labelling makes hundreds of thousands of them."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Room) -> bool:
        """Whether both share more than an edge."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def within(self, other: Room) -> bool:
        """Whether nothing of it stands outside the other."""
        return (
            self.left >= other.left
            and self.right <= other.right
            and self.top >= other.top
            and self.bottom <= other.bottom
        )

    def wider(self, by: float) -> Room:
        """The same room and `by` mm more on every side."""
        return Room(self.left - by, self.top - by, self.right + by, self.bottom + by)


def label_box(label: Label) -> Room:
    """What the capitals of a label cover, upright or turned; descenders hang below it."""
    return _box(label)


def letters_box(label: Label) -> Room:
    """What all letters of a label cover, those that hang below its line and those that rise over the capitals too."""
    hang = _HANG if _HANGING.intersection(label.text) else 0.0
    rise = _RISE if _RISING.intersection(label.text) else 0.0
    return _box(label, hang * label.size_mm, rise * label.size_mm)


_HANGING, _RISING = frozenset("gjpqy,;()[]{}|/"), frozenset("bdfhkl()[]{}|/")
_HANG, _RISE = 0.32, 0.12  # of the height of a capital, as the sheets' typeface is drawn


def _box(label: Label, hang: float = 0.0, rise: float = 0.0) -> Room:
    width = text_width(label.text, label.size_mm, label.strong)
    start = -width * _START[label.anchor]
    drop = label.size_mm * _DROP[label.level]
    turn = radians(label.rotation)
    corners = [
        (across, down) for across in (start, start + width) for down in (drop + hang, drop - label.size_mm - rise)
    ]
    xs = [label.x + across * cos(turn) - down * sin(turn) for across, down in corners]
    ys = [label.y + across * sin(turn) + down * cos(turn) for across, down in corners]
    return Room(min(xs), min(ys), max(xs), max(ys))
