"""Source: one file's text and name; Span: a stretch of it; the one conversion to line and column."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from functools import cached_property
from weakref import WeakSet


class Source:
    """The text of one `.rig` file.

    `name` is the path that findings and documents print: relative to the folder of the file named on the command line,
    with `/`. `data` holds the bytes as read, for the source hash. Line ends are LF in `text`. `origin` tells two files of
    one name in different folders apart; it is never printed.
    """

    def __init__(self, name: str, text: str, data: bytes | None = None, origin: str = "") -> None:
        self.name = name
        self.origin = origin
        self.text = text
        self.data = text.encode("utf-8", "surrogatepass") if data is None else data

    @cached_property
    def line_starts(self) -> list[int]:
        """Offset of the first character of each line."""
        starts = [0]
        at = self.text.find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = self.text.find("\n", at + 1)
        return starts

    def position(self, offset: int) -> tuple[int, int]:
        """Line and column of a character offset, both counted from 1; a column counts characters, a tab as one."""
        line = bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def line(self, number: int) -> str:
        """The text of a line (counted from 1), without its end."""
        start = self.line_starts[number - 1]
        end = self.text.find("\n", start)
        return self.text[start:] if end < 0 else self.text[start:end]

    def __repr__(self) -> str:
        return f"Source({self.name!r})"


class Span:
    """The characters `start` up to (not including) `end` of a source."""

    __slots__ = ("__weakref__", "_followers", "end", "source", "start")
    _followers: WeakSet[Span]  # only where there are any; who is of no use any more is let go

    def __init__(self, source: Source, start: int, end: int) -> None:
        self.source = source
        self.start = start
        self.end = end

    def move(self, to: Span) -> None:
        """From now on it is the place of the same words in a later text of the file, and so are those that follow it."""
        if self.source is to.source and self.start == to.start and self.end == to.end:
            return  # it was moved already, with its followers; two may follow each other
        self.source, self.start, self.end = to.source, to.start, to.end
        for each in tuple(getattr(self, "_followers", ())):
            each.move(to)

    def follow(self, other: Span) -> None:
        """Lies where that place lies, which is made of the same words, wherever that moves; those that follow it come along."""
        self.move(other)
        if not hasattr(other, "_followers"):
            other._followers = WeakSet()
        other._followers.add(self)

    def up_to(self, last: Span) -> Span:
        """From where it begins to where another place of its source ends; it moves with these two."""
        return _Stretch(self, last)

    @property
    def behind(self) -> Span:
        """Where something is written behind it; it moves with it."""
        return _Behind(self)

    @property
    def text(self) -> str:
        """What the user typed there."""
        return self.source.text[self.start : self.end]

    @property
    def line(self) -> int:
        """The line of the first character, from 1."""
        return self.source.position(self.start)[0]

    @property
    def column(self) -> int:
        """The column of the first character, from 1."""
        return self.source.position(self.start)[1]

    @property
    def reach(self) -> tuple[int, int, int, int]:
        """Line and column of the first character and of the first one after, from 1."""
        return (*self.source.position(self.start), *self.source.position(max(self.start, self.end)))

    def __str__(self) -> str:
        line, column = self.source.position(self.start)
        return f"{self.source.name}:{line}:{column}"

    def __repr__(self) -> str:
        return f"Span({self})"


class _Made(Span):
    """A place that is told by others, so that it is where they are."""

    __slots__ = ("_first", "_last")

    def __init__(self, first: Span, last: Span) -> None:
        self._first, self._last = first, last

    @property
    def source(self) -> Source:  # type: ignore[override]
        return self._first.source

    @property
    def end(self) -> int:  # type: ignore[override]
        return self._last.end

    def move(self, to: Span) -> None:
        """It moves with those by which it is told."""


class _Stretch(_Made):
    __slots__ = ()

    @property
    def start(self) -> int:  # type: ignore[override]
        return self._first.start


class _Behind(_Made):
    __slots__ = ()

    def __init__(self, span: Span) -> None:
        super().__init__(span, span)

    @property
    def start(self) -> int:  # type: ignore[override]
        return self._last.end


_SILENT = re.compile(r"^[ \t]*(?:#[^\n]*)?(?:\n|\Z)", re.MULTILINE)


class Said:
    """The text of a source without the lines that are empty or hold a remark alone, which say nothing; what stands where in the one and in
    the other."""

    def __init__(self, text: str) -> None:
        self._inside, self._outside, parts = [], [], []
        at = length = 0
        for line in (*_SILENT.finditer(text), None):
            start, end = line.span() if line else (len(text), len(text))
            if start > at:
                parts.append(text[at:start])
                self._inside.append(length)
                self._outside.append(at)
                length += start - at
            at = end
        self.text = "".join(parts)
        self._ends = length, len(text)

    def inside(self, offset: int) -> int | None:
        """Where in `text` the character at an offset of the source stands, or the end; None for one that is left out."""
        part = bisect_right(self._outside, offset) - 1
        if part < 0 or offset >= self._ends[1]:
            return self._ends[0] if offset == self._ends[1] else None
        found = self._inside[part] + offset - self._outside[part]
        return found if found < (*self._inside, self._ends[0])[part + 1] else None

    def outside(self, offset: int) -> int:
        """Where in the source a character of `text` stands, or the end."""
        if offset >= self._ends[0]:
            return self._ends[1]
        part = bisect_right(self._inside, offset) - 1
        return self._outside[part] + offset - self._inside[part]


def alike(old: str, new: str) -> tuple[int, int]:
    """How many characters at the beginning and at the end of two texts are the same, none counted twice."""
    same = _same(old, new)
    return same, min(_same(old[::-1], new[::-1]), min(len(old), len(new)) - same)


def _same(one: str, other: str) -> int:
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        if one[low:middle] == other[low:middle]:
            low = middle
        else:
            high = middle - 1
    return low


class InCommon:
    """What two texts have in common: runs of whole lines, and the beginning and the end of the lines beside these."""

    def __init__(self, old: str, new: str) -> None:
        self._starts: list[int] = []
        self._ends: list[int] = []
        self._moves: list[int] = []
        same, end = alike(old, new)
        first = old.rfind("\n", 0, same) + 1
        last = old.find("\n", len(old) - end) + 1 or len(old)
        by = len(new) - len(old)
        here, there = map(_LINE.findall, (old[first:last], new[first : last + by]))
        self._add(0, same, 0)
        for at, to, length in _common_lines(here, there):
            self._add(first + at, first + at + length, to - at)
        self._add(len(old) - end, len(old), by)

    def _add(self, start: int, end: int, by: int) -> None:
        self._starts.append(start)
        self._ends.append(end)
        self._moves.append(by)

    def moved(self, start: int, end: int) -> int | None:
        """By how many characters what stands from `start` to `end` of the old text has moved; None where the change touched it."""
        at = bisect_right(self._starts, start) - 1
        return self._moves[at] if end <= self._ends[at] else None

    def came(self, start: int, end: int) -> int | None:
        """The same of what stands there in the new text."""
        for begin, stop, by in zip(self._starts, self._ends, self._moves, strict=True):
            if begin + by <= start and end <= stop + by:
                return by
        return None


_LINE = re.compile(r"[^\n]*\n|[^\n]+")
_NEAR = 40  # lines that are looked at behind one that differs


def _common_lines(here: list[str], there: list[str]) -> Iterator[tuple[int, int, int]]:
    """Runs of lines that are in both, in one order: where each begins in the one text and in the other, and how long it is, in characters."""
    one = other = at = to = 0
    while one < len(here) and other < len(there):
        length = 0
        while one < len(here) and other < len(there) and here[one] == there[other]:
            length += len(here[one])
            one, other = one + 1, other + 1
        if length:
            yield at, to, length
            at, to = at + length, to + length
        left, right = _next_common(here, there, one, other)
        at += sum(map(len, here[one : one + left]))
        to += sum(map(len, there[other : other + right]))
        one, other = one + left, other + right


def _next_common(here: list[str], there: list[str], one: int, other: int) -> tuple[int, int]:
    """How many lines are to be passed over in each text until two that follow one another are the same; all where none are near."""
    for far in range(1, _NEAR):
        for left in range(far + 1):
            pair, twin = one + left, other + far - left
            if here[pair : pair + 2] == there[twin : twin + 2] != []:
                return left, far - left
    return len(here) - one, len(there) - other
