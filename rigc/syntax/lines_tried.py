"""Single lines that may be what a line that can't be read was to be -> whether they read."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar, cast

T = TypeVar("T")

MOST = 20_000
"""Readings of single lines by which it is sought what the lines of one file that can't be read were to be."""
_MOST_KEPT = 1_000

Key = tuple[str, str, bool]
Sought = dict[Key, tuple[list[str], int]]
"""What was found for a line, and for how many readings."""


class LinesTried:
    """Reads lines for one file. `known` is what was sought for lines of any file: what is known counts as if it was read again, so that the
    same is told of a file whatever was read before it."""

    def __init__(self, read: Callable[[str, str], bool], known: Sought) -> None:
        self._read, self._known, self._left = read, known, MOST
        self._seeks = False
        self._made: dict[object, object] = {}

    def reads(self, block: str, line: str) -> bool | None:
        """Whether a line reads in a block (at the top level under an empty text); nothing when it was asked too often in this file."""
        self._left -= 1
        if self._left >= 0:
            return self._read(block, line)
        if self._seeks:
            raise _Enough
        return None

    def once(self, key: object, make: Callable[[], T]) -> T:
        """What `make` gives, which hangs on nothing but the key and the file: made once for it, however often it is asked for."""
        if key not in self._made:
            self._made[key] = make()
        return cast(T, self._made[key])

    def sought(self, key: Key, seek: Callable[[], list[str]]) -> list[str]:
        """What `seek` finds, which hangs on nothing but the key: the block, the line, and whether it breaks off. Nothing where more readings
        would be needed for it than are left."""
        if key in self._known:
            found, spent = self._known[key]
            self._left -= spent
            return found if self._left >= 0 else []
        before, self._seeks = self._left, True
        try:
            found = seek()
        except _Enough:
            return []
        finally:
            self._seeks = False
        if len(self._known) >= _MOST_KEPT:
            self._known.clear()
        self._known[key] = found, before - self._left
        return found


class _Enough(Exception):
    """More readings were asked for than one file is given."""
