"""The size of a deck -> the tiles of a print at full size, each small enough for a page of A4 and of Letter."""

from __future__ import annotations

from math import ceil

from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record

TILE_WIDTH, TILE_HEIGHT, OVERLAP = 182.0, 190.0, 10.0
"""What a tile shows of the deck in mm at most, and how much of that its neighbour shows too."""

LEAST = 120.0
"""What a tile shows at least in mm: the square that checks the print lies in it."""


class Tile(Record):
    """A tile: its row (a letter, from the player's edge on) and column, what it shows, and which sides have a neighbour."""

    name: str
    area: Rectangle
    left: bool
    right: bool
    front: bool
    rear: bool


def tiles(width_mm: float, depth_mm: float) -> tuple[Tile, ...]:
    """All tiles, row by row from the player's left; they cover the deck, overlap by `OVERLAP` and are alike in size.

    Of several tiles in a line none is nearly empty: each takes its share, in whole millimetres.
    """
    columns, rows = _count(width_mm, TILE_WIDTH), _count(depth_mm, TILE_HEIGHT)
    wide, high = _share(width_mm, columns, TILE_WIDTH), _share(depth_mm, rows, TILE_HEIGHT)
    return tuple(
        Tile(
            f"{chr(ord('A') + row)}{column + 1}",
            Rectangle(column * (wide - OVERLAP), row * (high - OVERLAP), wide, high),
            column > 0,
            column < columns - 1,
            row > 0,
            row < rows - 1,
        )
        for row in range(rows)
        for column in range(columns)
    )


def _count(length: float, tile: float) -> int:
    return max(1, ceil((length - OVERLAP) / (tile - OVERLAP)))


def _share(length: float, count: int, tile: float) -> float:
    return tile if count == 1 else max(LEAST, float(ceil((length - OVERLAP) / count + OVERLAP)))
