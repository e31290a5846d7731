"""The size of a deck -> the tiles of a print at full size, each small enough for a page of A4 and of Letter."""

from __future__ import annotations

from math import ceil

from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record

SHORT, LONG, OVERLAP = 176.0, 236.0, 6.0
"""What a tile shows of the deck in mm at most, across and along the paper, and how much of that its neighbour shows too."""

LEAST = 60.0
"""What a tile shows at least in mm: its rulers are long enough to check the print by them."""


class Tile(Record):
    """A tile: its row (a letter, from the player's edge on) and column, what it shows, and which sides have a neighbour.

    A `turned` one lies across its paper.
    """

    name: str
    area: Rectangle
    left: bool
    right: bool
    front: bool
    rear: bool
    turned: bool


def tiles(width_mm: float, depth_mm: float) -> tuple[Tile, ...]:
    """All tiles, row by row from the player's left; they cover the deck, overlap by `OVERLAP` and are alike in size.

    They lie across the paper where fewer of them do. Of several tiles in a line none is nearly empty: each takes its share, in
    whole millimetres.
    """
    upright = (_count(width_mm, SHORT), _count(depth_mm, LONG))
    lying = (_count(width_mm, LONG), _count(depth_mm, SHORT))
    turned = lying[0] * lying[1] < upright[0] * upright[1]
    columns, rows = lying if turned else upright
    wide, high = _share(width_mm, columns), _share(depth_mm, rows)
    return tuple(
        Tile(
            f"{chr(ord('A') + row)}{column + 1}",
            Rectangle(column * (wide - OVERLAP), row * (high - OVERLAP), wide, high),
            column > 0,
            column < columns - 1,
            row > 0,
            row < rows - 1,
            turned,
        )
        for row in range(rows)
        for column in range(columns)
    )


def _count(length: float, tile: float) -> int:
    return max(1, ceil((length - OVERLAP) / (tile - OVERLAP)))


def _share(length: float, count: int) -> float:
    return max(LEAST, float(ceil((length - OVERLAP) / count + OVERLAP)))
