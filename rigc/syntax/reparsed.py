"""A file that was read before, and its text after a small change -> its statements: those that the change does not touch are kept, moved to
where they stand now."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable
from typing import Any

from rigc.record import Record
from rigc.source import InCommon, Source, Span
from rigc.syntax.nodes import File, Node, Word
from rigc.syntax.parsed import Parsed

_BLANK = re.compile(r"(?:\s|#[^\n]*)*")
Read = Callable[[str, int], File]


def reparsed(before: File, source: Source, read: Read, lent: bool = False) -> File:
    """The file of `source`, the same as by reading all of it; `read` reads a stretch of whole lines that begins at an offset, and raises
    where it cannot be read. Each statement ends with its line, so that whole lines before, between and after changes are read as they were.
    What is only `lent` is not moved: its places are in the text before."""
    old, text = before.span.source.text, source.text
    common = InCommon(old, text)
    statements: list[Node] = []
    at = 0
    for each in before.statements:
        begin, end = _line_of(old, each), old.find("\n", each.span.end) + 1 or len(old)
        by = common.moved(begin, end)
        if by is not None and _are_lines(text, begin + by, end + by):
            statements += _read(text, at, begin + by, read)
            statements.append(each if lent else _moved(each, source, by))
            at = end + by
    statements += _read(text, at, len(text), read)
    return File(statements=tuple(statements), span=Span(source, 0, len(text)))


def _read(text: str, begin: int, end: int, read: Read) -> tuple[Node, ...]:
    """What stands between two statements that are kept."""
    piece = text[begin:end]
    return () if _BLANK.fullmatch(piece) else read(piece, begin).statements


class Unchanged:
    """The statements of a file that was read before, by where they stand in its text after a change; none of which something was passed over."""

    def __init__(self, before: Parsed, source: Source) -> None:
        self._source, self._before = source, before.file.span.source.text
        self._common = InCommon(self._before, source.text)
        skipped = sorted(each.start for each in before.skipped)
        self._by_start: dict[int, Any] = {
            each.span.start: each
            for each in before.file.statements
            if bisect_left(skipped, each.span.start) == bisect_left(skipped, each.span.end)
        }

    def alone_in(self, text: str, base: int) -> Node | None:
        """The statement that is all there is, remarks apart, in a stretch of whole lines that the change did not touch; None otherwise."""
        end = base + len(text)
        by = self._common.came(base, end)
        if by is None or self._source.text[base:end] != text or not _are_lines(self._before, base - by, end - by):
            return None
        found = _BLANK.match(text)
        start = base + (found.end() if found else 0)
        node = self._by_start.get(start - by)
        if node is None or not _BLANK.fullmatch(self._source.text, node.span.end + by, end):
            return None
        moved: Node = _moved(node, self._source, by)
        return moved


def _are_lines(text: str, begin: int, end: int) -> bool:
    """Whether a stretch is of whole lines; else it may be what is left of one, or stand behind the sign of a remark."""
    return (begin == 0 or text[begin - 1] == "\n") and (end == len(text) or text[end - 1] == "\n")


def _line_of(text: str, statement: Node) -> int:
    """Where the first line of a statement begins."""
    return text.rfind("\n", 0, statement.span.start) + 1


def _moved(value: Any, source: Source, by: int) -> Any:
    kind = type(value)
    if kind is tuple:
        return tuple([_moved(each, source, by) for each in value])
    if isinstance(value, Record):
        made = object.__new__(kind)
        state = made.__dict__
        for name, each in value.__dict__.items():
            sort = type(each)  # most of what a node holds is a place, a text, a word or nothing
            if sort is Span:
                state[name] = Span(source, each.start + by, each.end + by)
            elif sort is Word:
                state[name] = word = object.__new__(Word)
                span = each.span
                word.__dict__.update(text=each.text, span=Span(source, span.start + by, span.end + by))
            else:
                state[name] = each if each is None or sort is str else _moved(each, source, by)
        return made
    return value
