"""The outlines on one deck -> what is in the way there: quick answers for many leads, in tenths of a millimetre."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Iterator

from rigc.record import Record


class Box(Record):
    """What a thing covers of its deck, in tenths of a millimetre; `under` things hang below it."""

    thing: str
    left: int
    front: int
    right: int
    rear: int
    under: bool


class DeckBoxes:
    """All boxes and drop lines of one deck, sorted so that a question looks at few of them."""

    def __init__(self, boxes: Iterable[Box], lines: Iterable[int]) -> None:
        self.lines = sorted(lines)
        self.by_thing = {box.thing: box for box in boxes}
        self._top = sorted((box for box in self.by_thing.values() if not box.under), key=lambda box: box.left)
        self._lefts = [box.left for box in self._top]
        self._widest = max((box.right - box.left for box in self._top), default=0)
        self._covered: dict[int, tuple[list[int], list[int]]] = {}

    def on_top(self, left: int, right: int) -> Iterator[Box]:
        """The things on top that may reach into the strip between two x, left ones first."""
        first = bisect_left(self._lefts, left - self._widest)
        for box in self._top[first : bisect_left(self._lefts, right)]:
            if box.right > left:
                yield box

    def covers(self, x: int, y: int) -> bool:
        """Whether a point lies strictly inside a footprint, above or below the deck; edges leave it free."""
        if y not in self._covered:
            self._covered[y] = self._covered_at(y)
        lefts, rights = self._covered[y]
        at = bisect_left(lefts, x) - 1
        return at >= 0 and x < rights[at]

    def drop_line(self, x: int, y: int, other_y: int) -> int | None:
        """The line nearest to y that is free at x; on a tie the one nearer to the other end's y, then the one in front.

        None if every line is covered there.
        """
        at = bisect_left(self.lines, y)
        before, behind = self.lines[:at], self.lines[at:][::-1]  # the nearest of each stands last
        while before or behind:
            sides = [side for side in (before, behind) if side]
            side = min(sides, key=lambda side: (abs(y - side[-1]), abs(other_y - side[-1]), side[-1]))
            line = side.pop()
            if not self.covers(x, line):
                return line
        return None

    def _covered_at(self, y: int) -> tuple[list[int], list[int]]:
        """The stretches of a line in x that are covered; two that only touch leave the point between them free."""
        lefts: list[int] = []
        rights: list[int] = []
        across = sorted((box.left, box.right) for box in self.by_thing.values() if box.front < y < box.rear)
        for left, right in across:
            if rights and left < rights[-1]:
                rights[-1] = max(rights[-1], right)
            else:
                lefts.append(left)
                rights.append(right)
        return lefts, rights
