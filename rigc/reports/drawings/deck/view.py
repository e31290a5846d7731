"""Millimetres of a deck -> millimetres on paper, seen from above, from below or from an edge."""

from __future__ import annotations

from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.shapes import Box, Point

SCALES = (1, 2, 2.5, 3, 4, 5, 6, 8, 10, 20, 50)
"""The n of 1:n that a drawing may have: those of ISO 5455 (from memory), and some between, for a board at half the size that its page
has room for loses its names."""

PAGE_WIDTH, PAGE_HEIGHT = 257.0, 146.8
"""What a drawing to scale may take on a landscape page of A4 or Letter, its scale bar besides, in mm."""


class View(Record):
    """A deck of that size on paper: `left` and `top` are where its upper left corner stands, in mm.

    Seen from above the player is at the bottom. From below (`below`) the deck is turned over towards the player's
    far side: the player is at the top, and left stays left. `aside` and `along` are what the inside of a case around it
    takes on paper beyond the usual margins, in x and in y.
    """

    scale: float
    left: float
    top: float
    width_mm: float
    depth_mm: float
    below: bool = False
    aside: float = 0.0
    along: float = 0.0

    @property
    def right(self) -> float:
        """The right edge of the deck on paper."""
        return self.left + self.width_mm / self.scale

    @property
    def bottom(self) -> float:
        """The lower edge of the deck on paper."""
        return self.top + self.depth_mm / self.scale

    def point(self, x_mm: float, y_mm: float) -> Point:
        """Where a point of the deck stands on paper."""
        down = y_mm if self.below else self.depth_mm - y_mm
        return self.left + x_mm / self.scale, self.top + down / self.scale

    def room(self, area: Rectangle) -> Room:
        """Where an area of the deck lies on paper."""
        (x1, y1), (x2, y2) = self.point(area.x_mm, area.y_mm), self.point(area.right_mm, area.rear_mm)
        return Room(x1, min(y1, y2), x2, max(y1, y2))

    def direction(self, dx: float, dy: float) -> tuple[int, int]:
        """The direction on paper, along an axis, that is nearest to one on the deck; (0, 0) for none."""
        across, away = (round(dx), 0) if abs(dx) > abs(dy) else (0, round(dy))
        return across, (away if self.below else -away)


def fitting_scale(width_mm: float, height_mm: float, room_width: float, room_height: float) -> float:
    """The largest scale at which so much fits into the room on paper; the smallest of `SCALES` if none does."""
    fits = (scale for scale in SCALES if width_mm / scale <= room_width and height_mm / scale <= room_height)
    return next(fits, SCALES[-1])


def boxed(room: Room, colour: str = "black", pattern: str = "solid", width_mm: float = 0.25, fill: str = "") -> Box:
    """A room drawn as a box."""
    return Box(room.left, room.top, room.right - room.left, room.bottom - room.top, colour, pattern, width_mm, fill)
