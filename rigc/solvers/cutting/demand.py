"""Pieces to cut -> sizes with how many of each: what all parts of the cutting work on. All lengths are whole numbers."""

from __future__ import annotations

from rigc.record import Record

Piece = int
Raw = tuple[Piece, ...]
"""The pieces cut from one raw (a reel or roll), the longest first."""


class Demand(Record):
    """`counts[i]` pieces of `sizes[i]`, the longest size first, none longer than the raw's `length`."""

    length: int
    sizes: tuple[int, ...]
    counts: tuple[int, ...]

    @property
    def total(self) -> int:
        """The length of all pieces."""
        return sum(size * count for size, count in zip(self.sizes, self.counts, strict=True))


def demand(length: int, pieces: tuple[Piece, ...]) -> Demand:
    """Counts equal pieces. Every piece must be longer than 0 and fit the raw."""
    assert all(0 < piece <= length for piece in pieces), "each piece is longer than 0 and no longer than the raw"
    sizes = tuple(sorted(set(pieces), reverse=True))
    return Demand(length, sizes, tuple(pieces.count(size) for size in sizes))


def left_of(wanted: Demand, raws: list[Raw]) -> Demand:
    """What is still wanted after these raws are cut; more pieces than wanted count as none left."""
    cut = [piece for raw in raws for piece in raw]
    left = {
        size: count - cut.count(size)
        for size, count in zip(wanted.sizes, wanted.counts, strict=True)
        if count > cut.count(size)
    }
    return Demand(wanted.length, tuple(left), tuple(left.values()))
