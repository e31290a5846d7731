"""Overlaps -> those that have one cause together: one thing in the way of all others, or a heap."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.deck.body_clash import Overlap
from rigc.analysis.deck.placement import Outline
from rigc.record import Record

_MANY = 3
"""So many overlaps at least are told together."""


class Heap(Record):
    """Things of which each overlaps another, in the order of the deck. `hub` is the one that every overlap is of, if there
    is one."""

    things: tuple[Outline, ...]
    overlaps: tuple[Overlap, ...]

    @property
    def hub(self) -> Outline | None:
        """The one thing without which nothing would overlap."""
        first = self.overlaps[0]
        return next(
            (each for each in (first.one, first.other) if all(_is_of(one, each.thing) for one in self.overlaps)), None
        )

    @property
    def has_one_cause(self) -> bool:
        """Else each two of them are told by themselves: a row in which each is a little too near to the next is put right one by one."""
        dense = len(self.overlaps) >= len(self.things) > _MANY
        return len(self.overlaps) >= _MANY and (dense or self.hub is not None)


def _is_of(overlap: Overlap, thing: str) -> bool:
    return thing in (overlap.one.thing, overlap.other.thing)


def heaps(overlaps: Sequence[Overlap]) -> list[Heap]:
    """All overlaps, by what hangs together; in the order of their first ones."""
    of: dict[str, list[int]] = {}
    for number, each in enumerate(overlaps):
        for body in (each.one, each.other):
            of.setdefault(body.thing, []).append(number)
    found, seen = list[Heap](), set[str]()
    for first in of:
        if first in seen:
            continue
        seen.add(first)
        numbers, edge, things = set[int](), [first], dict[str, Outline]()
        while edge:
            fresh = set(of[edge.pop()]) - numbers
            numbers |= fresh
            for body in (side for number in fresh for side in (overlaps[number].one, overlaps[number].other)):
                things[body.thing] = body
                if body.thing not in seen:
                    seen.add(body.thing)
                    edge.append(body.thing)
        found.append(
            Heap(tuple(things[name] for name in of if name in things), tuple(overlaps[n] for n in sorted(numbers)))
        )
    return found
