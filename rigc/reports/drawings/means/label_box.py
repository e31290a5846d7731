"""A label -> the room that its letters take on paper."""

from __future__ import annotations

from functools import cache
from math import cos, radians, sin
from typing import NamedTuple, Protocol

from rigc.reports.drawings.means.lettering import text_width

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


class Written(Protocol):
    """What says of one line of text where it stands, as a label does."""

    @property
    def x(self) -> float: ...
    @property
    def y(self) -> float: ...
    @property
    def text(self) -> str: ...
    @property
    def size_mm(self) -> float: ...
    @property
    def anchor(self) -> str: ...
    @property
    def level(self) -> str: ...
    @property
    def rotation(self) -> float: ...
    @property
    def strong(self) -> bool: ...


def label_box(label: Written) -> Room:
    """What the capitals of a label cover, upright or turned; descenders hang below it."""
    return _box(label, 0.0, 0.0)


def letters_box(label: Written) -> Room:
    """What all letters of a label cover, those that hang below its line and those that rise over the capitals too."""
    return _box(label, *_hang_and_rise(label.text, label.size_mm))


def _box(label: Written, hang: float, rise: float) -> Room:
    x, y, size, rotation = label.x, label.y, label.size_mm, label.rotation
    start, width, drop = _extent(label.text, size, label.strong, label.anchor, label.level)
    if rotation == 0:
        return Room(x + start, y + drop - size - rise, x + start + width, y + drop + hang)
    if rotation == -90:
        return Room(x + drop - size - rise, y - start - width, x + drop + hang, y - start)
    turn = radians(rotation)
    corners = [(across, down) for across in (start, start + width) for down in (drop + hang, drop - size - rise)]
    xs = [x + across * cos(turn) - down * sin(turn) for across, down in corners]
    ys = [y + across * sin(turn) + down * cos(turn) for across, down in corners]
    return Room(min(xs), min(ys), max(xs), max(ys))


@cache
def _extent(text: str, size_mm: float, strong: bool, anchor: str, level: str) -> tuple[float, float, float]:
    """How far right of its point a label begins, how wide it is, and how far below the point its line lies."""
    width = text_width(text, size_mm, strong)
    return -width * _START[anchor], width, size_mm * _DROP[level]


@cache
def _hang_and_rise(text: str, size_mm: float) -> tuple[float, float]:
    hang = _HANG if _HANGING.intersection(text) else 0.0
    rise = _RISE if _RISING.intersection(text) else 0.0
    return hang * size_mm, rise * size_mm


_HANGING, _RISING = frozenset("gjpqy,;()[]{}|/"), frozenset("bdfhkl()[]{}|/")
_HANG, _RISE = 0.32, 0.12  # of the height of a capital, as the sheets' typeface is drawn
