"""A point or a room and a name -> the places where the name might stand, for the labelling."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import cos, pi, sin

from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import LETTERS, Point

NAME_MM = 3.5
"""Letters of the names of things, in mm; those of all else are `LETTERS`."""

_RADII = (3.0, 5.5, 8.0, 11.0, 15.0, 20.0, 26.0, 34.0, 45.0)
_TURNS = (0.0, 1.0, 0.5, -0.5, 0.17, -0.17, 0.83, -0.83, 0.34, -0.34, 0.66, -0.66)
_WAYS = tuple(
    (radius, aside, radius * sin(turn * pi), "start" if aside > 0.3 else "end" if aside < -0.3 else "middle")
    for radius in _RADII
    for turn in _TURNS
    for aside in (radius * cos(turn * pi),)
)
"""Of each leader its length, how far to the right and down it goes, and which end of the letters it comes to."""
_LED = 5.0  # what a leader costs beside its length, in mm


def around(at: Point, text: str, strong: bool = False, cost: float = _LED, within: float = 1e9) -> Iterator[Choice]:
    """At the end of a leader from a point, the nearest first, level and turned to read from the right; none is longer than
    `within`, in mm."""
    x, y = at
    for radius, aside, down, anchor in _WAYS:
        if radius > within:
            return
        yield Choice(x + aside, y + down, text, cost, at, anchor, strong=strong)
        if abs(down) > abs(aside):
            end = "end" if down > 0 else "start"
            yield Choice(x + aside, y + down, text, cost + 1, at, end, rotation=-90, strong=strong)


def inside(here: Room, text: str, strong: bool, sizes: tuple[float, ...]) -> Iterator[Choice]:
    """Within a room, from the middle outwards: level, then turned, then in smaller letters; none that would stick out of it."""
    across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
    wide, high = here.right - here.left, here.bottom - here.top
    for rank, size in enumerate(sizes):
        long = text_width(text, size, strong)
        for level in _PARTS:
            for aside in _ASIDES:
                if wide * (1 - 2 * abs(aside)) < long:
                    continue
                cost = 6.0 * rank + 4 * abs(level) + 3 * abs(aside)
                x, y = across + wide * aside, down + high * level
                yield Choice(x, y, text, cost, anchor="middle", size_mm=size, strong=strong)
        for aside in _PARTS:
            for level in _ASIDES:
                if high * (1 - 2 * abs(level)) < long:
                    continue
                cost = 6.0 * rank + 2.5 + 3 * abs(level) + 4 * abs(aside)
                x, y = across + wide * aside, down + high * level
                yield Choice(x, y, text, cost, anchor="middle", rotation=-90, size_mm=size, strong=strong)


_PARTS, _ASIDES = (0.0, 0.11, -0.11, 0.22, -0.22, 0.33, -0.33, 0.42, -0.42), (0.0, 0.2, -0.2, 0.33, -0.33)


def led_from(at: Point, text: str, strong: bool = False) -> Wish:
    """A name at the end of a leader from a point."""
    return Wish(partial(around, at, text, strong))


def named_in(here: Room, text: str, strong: bool = True, sizes: tuple[float, ...] = (NAME_MM, LETTERS)) -> Wish:
    """The name of a thing in its outline, or beside it; in the first of the sizes for which there is room."""
    return Wish(partial(_name, here, text, strong, sizes))


def _name(here: Room, text: str, strong: bool, sizes: tuple[float, ...]) -> Iterator[Choice]:
    """The name of a thing: within its outline, else beside it with a leader from its edge."""
    yield from inside(here, text, strong, sizes)
    yield from _beside(here, text, strong)
    middle = ((here.left + here.right) / 2, (here.top + here.bottom) / 2)
    for choice in around(middle, text, strong):
        yield choice._replace(cost=choice.cost + 25)


def _beside(here: Room, text: str, strong: bool) -> Iterator[Choice]:
    """Along the edges of a room, with a short leader from within."""
    for part in (0.5, 0.3, 0.7, 0.15, 0.85):
        y = here.top + (here.bottom - here.top) * part
        x = here.left + (here.right - here.left) * part
        for edge, out in ((here.left, -1), (here.right, 1)):
            start, anchor = (edge - out * 0.6, y), "start" if out > 0 else "end"
            yield Choice(edge + out * 2.8, y, text, 15, start, "middle", rotation=-90, strong=strong)
            yield Choice(edge + out * 1.8, y, text, 15, start, anchor, strong=strong)
        for edge, out in ((here.top, -1), (here.bottom, 1)):
            yield Choice(x, edge + out * 2.8, text, 15, (x, edge - out * 0.6), "middle", strong=strong)
