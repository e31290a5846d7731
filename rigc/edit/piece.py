"""Piece: one line of the canonical text, and which stretch of the old text it comes from."""

from __future__ import annotations

from rigc.record import Record


class Piece(Record):
    """A line without indent. `start` and `end` are offsets in the old text, `depth` counts indents.

    `kind` is `line`, `open` or `close` (of a block), `comment`, and for the lines of a broken chain `goes on` for the
    first, `between`, and `last`.
    """

    text: str
    start: int
    end: int
    depth: int
    kind: str
