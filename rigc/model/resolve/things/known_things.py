"""Things by the words of the blocks of which they were made without a finding: the same words make the same thing again."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from rigc.model.twins import Copies
from rigc.source import Span
from rigc.syntax.nodes import Node

_Words = tuple[tuple[str, str, str, int], ...]


class KnownThings:
    """What is known, and what was `before` in the text that this one came from. A thing whose blocks stand elsewhere now is copied, with each place
    where its words are now; else it is the very thing."""

    def __init__(self, before: KnownThings | None = None) -> None:
        self._made: dict[_Words, tuple[tuple[Span, ...], Any]] = {}
        self._before = {} if before is None else before._made

    def of(self, blocks: Sequence[Node]) -> Any:
        """The thing; None where none is known."""
        words = tuple(map(_words, blocks))
        known = self._made.get(words) or self._before.get(words)
        if known is None:
            return None
        before, thing = known
        now = tuple(each.span for each in blocks)
        if not all(map(_is_at, before, now)):
            try:
                thing = Copies(_Shift(before, now).place).of(thing)
            except _Elsewhere:
                return None
        self._made[words] = now, thing
        return thing

    def keep(self, blocks: Sequence[Node], thing: Any) -> None:
        """The thing is known from now on."""
        self._made[tuple(map(_words, blocks))] = tuple(each.span for each in blocks), thing

    def settle(self) -> None:
        """All was asked for; what was before is let go."""
        self._before = {}


def _words(block: Any) -> tuple[str, str, str, int]:
    """The file of a block, its text, and how many of its lines could be read and say something new."""
    span = block.span
    return span.source.name, span.source.origin, span.text, len(block.items)


def _is_at(one: Span, other: Span) -> bool:
    return one.source is other.source and one.start == other.start


class _Elsewhere(Exception):
    """A place lies in none of the blocks."""


class _Shift:
    """Places in blocks as they were, and where they are."""

    def __init__(self, before: Sequence[Span], now: Sequence[Span]) -> None:
        self._moves = [
            (was.source, was.start, was.end, to.source, to.start - was.start)
            for was, to in zip(before, now, strict=True)
        ]

    def place(self, span: Span) -> Span:
        """Where it is. Raises `_Elsewhere`."""
        start, end = span.start, span.end
        for source, begin, stop, now, by in self._moves:
            if begin <= start and end <= stop and span.source is source:
                return Span(now, start + by, end + by)
        raise _Elsewhere
