"""A text, readable or not -> the lines that can be folded: blocks, runs of comments, runs of `use`."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.record import Record

_MARKS = re.compile(r'"(?:\\.|[^"\\\n])*"?|#[^\n]*|[{}\n]')


class Fold(Record):
    """From a line to a line, both from 0; `sort` is block, comment or imports."""

    start: int
    end: int
    sort: str


def folds(text: str) -> tuple[Fold, ...]:
    """In the order of their first lines."""
    found = [*_blocks(text), *_runs(text, r"[ \t]*#", "comment"), *_runs(text, r"use[ \t]", "imports")]
    return tuple(sorted(found, key=lambda each: (each.start, -each.end)))


def _blocks(text: str) -> Iterator[Fold]:
    line, opened = 0, -1
    for mark in _MARKS.finditer(text):
        sign = mark.group()
        if sign == "\n":
            line += 1
        elif sign == "{":
            opened = line
        elif sign == "}" and opened >= 0:
            if line > opened:
                yield Fold(opened, line, "block")
            opened = -1


def _runs(text: str, begins: str, sort: str) -> Iterator[Fold]:
    pattern, first = re.compile(begins), -1
    lines = text.split("\n")
    for number, line in enumerate([*lines, ""]):
        if pattern.match(line):
            first = number if first < 0 else first
        else:
            if 0 <= first < number - 1:
                yield Fold(first, number - 1, sort)
            first = -1
