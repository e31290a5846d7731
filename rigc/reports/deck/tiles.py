"""The size of a deck -> the tiles of a print at full size, each small enough for a page of A4 and of Letter."""

from __future__ import annotations

from math import ceil

from rigc.model.rectangle import Rectangle
from rigc.record import Record

TILE_WIDTH, TILE_HEIGHT, OVERLAP = 182.0, 190.0, 10.0
"""What a tile shows of the deck in mm, and how much of that its neighbour shows too."""


class Tile(Record):
    """A tile: its row (a letter, from the player's edge on) and column, what it shows, and which sides have a neighbour."""

    name: str
    area: Rectangle
    left: bool
    right: bool
    front: bool
    rear: bool


def tiles(width_mm: float, depth_mm: float) -> tuple[Tile, ...]:
    """All tiles, row by row from the player's left; they cover the deck and overlap by `OVERLAP`."""
    columns, rows = _count(width_mm, TILE_WIDTH), _count(depth_mm, TILE_HEIGHT)
    return tuple(
        Tile(
            f"{chr(ord('A') + row)}{column + 1}",
            Rectangle(column * (TILE_WIDTH - OVERLAP), row * (TILE_HEIGHT - OVERLAP), TILE_WIDTH, TILE_HEIGHT),
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
