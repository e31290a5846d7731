"""What is drawn -> which small squares of paper it fills or crosses, a bit each: most places at which letters have no room are known so at once.

A closed ground that holds a square meets whatever covers a part of that; a line that goes through one goes into whatever covers it whole.
"""

from __future__ import annotations

from math import ceil, floor

from rigc.reports.drawings.means.label_box import Room

_SIDE = 1.0  # of a square, in mm
_HAIR = 1e-6  # so much further, in squares, letters must reach, whatever floats round away


class Raster:
    """Squares of paper of that room."""

    def __init__(self, room: Room) -> None:
        self._left, self._top = room.left, room.top
        self._columns, self._rows = (
            ceil(long / _SIDE) + 1 for long in (room.right - room.left, room.bottom - room.top)
        )
        self._closed = [0] * self._rows
        self._crossed = [0] * self._rows

    def close(self, room: Room) -> None:
        """Nothing is written there."""
        left, right = ((x - self._left) / _SIDE for x in (room.left, room.right))
        top, bottom = ((y - self._top) / _SIDE for y in (room.top, room.bottom))
        self._mark(self._closed, ceil(left), floor(right) - 1, ceil(top), floor(bottom) - 1)

    def cross(self, x1: float, y1: float, x2: float, y2: float) -> None:
        """A line goes there."""
        x1, x2 = (x1 - self._left) / _SIDE, (x2 - self._left) / _SIDE
        y1, y2 = (y1 - self._top) / _SIDE, (y2 - self._top) / _SIDE
        if x1 == x2 or y1 == y2:
            left, right = sorted((floor(x1), floor(x2)))
            top, bottom = sorted((floor(y1), floor(y2)))
            self._mark(self._crossed, left, right, top, bottom)
            return
        steps = ceil(max(abs(x2 - x1), abs(y2 - y1)))
        across, down = (x2 - x1) / steps, (y2 - y1) / steps
        columns, rows, crossed = self._columns, self._rows, self._crossed
        for step in range(steps + 1):
            column, row = floor(x1 + across * step), floor(y1 + down * step)
            if 0 <= column < columns and 0 <= row < rows:
                crossed[row] |= 1 << column

    def _mark(self, rows: list[int], left: int, right: int, top: int, bottom: int) -> None:
        left, right = max(left, 0), min(right, self._columns)
        if left <= right:
            bits = (2 << right) - (1 << left)
            for row in range(max(top, 0), min(bottom, self._rows - 1) + 1):
                rows[row] |= bits

    def is_full(self, left: float, top: float, right: float, bottom: float) -> bool:
        """Whether letters there, within the room, are on a closed ground or a line for certain; if not, they may be all the same."""
        first, last = int((left - self._left) / _SIDE + _HAIR), int((right - self._left) / _SIDE - _HAIR)
        upper, lower = int((top - self._top) / _SIDE + _HAIR), int((bottom - self._top) / _SIDE - _HAIR)
        bits = (2 << last) - (1 << first)
        for row in self._closed[upper : lower + 1]:
            if row & bits:
                return True
        if last - first < 2:
            return False
        bits = (1 << last) - (2 << first)
        return any(row & bits for row in self._crossed[upper + 1 : lower])
