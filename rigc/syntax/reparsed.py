"""A file that was read before, and its text after a small change -> its statements: those that the change does not touch are kept, moved to
where they stand now."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.nodes import File, Node

Read = Callable[[str, int], File]


def reparsed(before: File, source: Source, read: Read) -> File:
    """The file of `source`, the same as by reading all of it; `read` reads a stretch of whole lines that begins at an offset, and raises
    where it cannot be read. Each statement ends with its line, so that whole lines before and after a change are read as they were."""
    old, text = before.span.source.text, source.text
    same = _alike(old, text)
    same_end = min(_alike(old[::-1], text[::-1]), min(len(old), len(text)) - same)
    first_changed, last_changed = old.rfind("\n", 0, same) + 1, len(old) - same_end
    moved_by = len(text) - len(old)
    head = [each for each in before.statements if each.span.end < first_changed]
    tail = [each for each in before.statements if _line_of(old, each) > last_changed]
    begin = text.find("\n", head[-1].span.end) + 1 if head else 0
    end = _line_of(old, tail[0]) + moved_by if tail else len(text)
    between = read(text[begin:end], begin).statements
    kept = ([_moved(each, source, 0) for each in head], [_moved(each, source, moved_by) for each in tail])
    return File(statements=(*kept[0], *between, *kept[1]), span=Span(source, 0, len(text)))


def _alike(one: str, other: str) -> int:
    """How many characters at their beginnings are the same."""
    low, high = 0, min(len(one), len(other))
    while low < high:
        middle = (low + high + 1) // 2
        if one[low:middle] == other[low:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _line_of(text: str, statement: Node) -> int:
    """Where the first line of a statement begins."""
    return text.rfind("\n", 0, statement.span.start) + 1


def _moved(value: Any, source: Source, by: int) -> Any:
    if isinstance(value, Span):
        return Span(source, value.start + by, value.end + by)
    if isinstance(value, tuple):
        return tuple([_moved(each, source, by) for each in value])
    if isinstance(value, Record):
        return type(value)(*[_moved(value.__dict__[name], source, by) for name in value.FIELDS])
    return value
