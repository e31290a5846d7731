"""Places in sources -> the lines around them with a gutter of line numbers and a mark under each place.

What is printed is harmless to a terminal: control characters, invisible ones and lone surrogates are spelled out.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterable
from itertools import groupby

from rigc.diagnostics.diagnostic import Label
from rigc.source import Source

WIDTH = 110
"""The most characters of a line that are shown; of a longer line, this many around the place."""

_LEAD = 40  # characters kept in front of the place in a long line
_TAB = 4
_LONGEST = 500  # characters of a message: a name of a megabyte must not bury the other findings


def excerpt(labels: Iterable[Label], paint: Callable[[str], str] = str) -> list[str]:
    """The lines of one source with their marks, in line order; `paint` colours a mark and its label."""
    ordered = sorted(labels, key=lambda label: (label.span.start, label.span.end))
    if not ordered:
        return []
    gutter = max(2, len(str(ordered[-1].span.line)))
    lines = []
    for number, group in groupby(ordered, key=lambda label: label.span.line):
        text = ordered[0].span.source.line(number)
        places = list(group)
        for together in [places] if len(text) <= WIDTH else [[place] for place in places]:
            lines += _line(together, number, gutter, paint)
    return lines


def visible(text: str) -> str:
    """The text with every character spelled out that would act on a terminal, or not be seen; cut if it is very long."""
    if len(text) > _LONGEST:
        text = f"{text[: _LONGEST - 1]}…"
    return _spelled(text)


def harmless(text: str) -> str:
    """Lines of text with every character spelled out that would act on a terminal, or not be seen."""
    return "\n".join("\t".join(map(_spelled, line.split("\t"))) for line in text.split("\n"))


def _spelled(text: str) -> str:
    return text if text.isprintable() else "".join(_cell(char) for char in text)


def _line(labels: list[Label], number: int, gutter: int, paint: Callable[[str], str]) -> list[str]:
    source = labels[0].span.source
    text, first = source.line(number), labels[0].span.column - 1
    low = max(0, first - _LEAD) if len(text) > WIDTH else 0
    high = min(len(text), low + WIDTH)
    before, after = "…" if low else "", "…" if high < len(text) else ""
    shown, columns = _laid_out(text[low:high], len(before))
    lines = [f" {number:>{gutter}} | {before}{shown}{after}".rstrip()]
    for label in labels:
        start = min(label.span.column - 1, high) - low
        end, runs_on = _end(source, label, number)
        stop = min(max(end - low, start), high - low)
        mark = "~" * max(1, columns[stop] - columns[start])
        told = " ".join(filter(None, (mark, visible(label.text), runs_on)))
        lines.append(f" {'':>{gutter}} | {' ' * columns[start]}{paint(told)}")
    return lines


def _end(source: Source, label: Label, number: int) -> tuple[int, str]:
    """The offset in its first line where a place ends, and a word on where it ends if not there."""
    last = max(label.span.start, min(label.span.end, len(source.text)) - 1)
    line, column = source.position(last)
    return (column, "") if line == number else (len(source.line(number)), f"(to line {line})")


def _laid_out(text: str, column: int) -> tuple[str, list[int]]:
    """The text as shown, and the screen column of each character's first cell and of the end."""
    shown, columns = [], []
    for char in text:
        columns.append(column)
        cell = " " * (_TAB - column % _TAB) if char == "\t" else _cell(char)
        shown.append(cell)
        column += _cells(cell)
    return "".join(shown), [*columns, column]


def _cell(char: str) -> str:
    if char.isprintable() or _combines(char):
        return char
    code = ord(char)
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}" if code < 0x10000 else f"\\U{code:08x}"


def _combines(char: str) -> bool:
    return char > "\x7f" and unicodedata.combining(char) > 0


def _cells(text: str) -> int:
    """How many cells of a terminal the text takes: wide characters two, combining ones none."""
    if text.isascii():
        return len(text)
    wide = unicodedata.east_asian_width
    return sum(0 if _combines(char) else 2 if wide(char) in "WF" else 1 for char in text)
