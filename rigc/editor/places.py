"""Offsets in a source <-> lines and characters as an editor counts them: from 0, a character in units of its encoding."""

from __future__ import annotations

from collections.abc import Callable

from rigc.record import Record
from rigc.source import Source, Span

UTF_8, UTF_16, UTF_32 = "utf-8", "utf-16", "utf-32"
_UNITS: dict[str, Callable[[str], int]] = {
    UTF_8: lambda text: len(text.encode("utf-8", "surrogatepass")),
    UTF_16: lambda text: len(text) + sum(sign > "\uffff" for sign in text),
    UTF_32: len,
}


class Place(Record):
    """A line and a character in it, both from 0; a character counts the units of an encoding that stand before it."""

    line: int
    character: int


class Stretch(Record):
    """From a place up to, not including, another."""

    start: Place
    end: Place


def units(text: str, encoding: str = UTF_16) -> int:
    """How many units of an encoding a text takes: a sign outside the basic plane takes two of UTF-16."""
    return _UNITS[encoding](text)


def place_of(source: Source, offset: int, encoding: str = UTF_16) -> Place:
    """Where an offset is."""
    line, column = source.position(offset)
    start = offset - (column - 1)
    return Place(line - 1, units(source.text[start:offset], encoding))


def offset_of(source: Source, place: Place, encoding: str = UTF_16) -> int:
    """The offset at a place. Behind the end of a line it is that end, behind the last line the end of the text; inside a sign, before it."""
    starts = source.line_starts
    if place.line >= len(starts):
        return len(source.text)
    start = starts[place.line]
    text = source.line(place.line + 1)
    if text.isascii():
        return start + min(max(0, place.character), len(text))
    taken = 0
    for at, sign in enumerate(text):
        taken += units(sign, encoding)
        if taken > place.character:
            return start + at
    return start + len(text)


def stretch_of(span: Span, encoding: str = UTF_16) -> Stretch:
    """Where a span is."""
    return Stretch(place_of(span.source, span.start, encoding), place_of(span.source, span.end, encoding))
