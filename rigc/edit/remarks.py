"""A source's text -> its comments (`#` to the end of the line) with their places; a `#` inside quotes is none."""

from __future__ import annotations

import re
from collections.abc import Iterator

from rigc.record import Record

_QUOTED_OR_REMARK = re.compile(r'"(?:\\.|[^"\\\n])*"|#[^\n]*')


class Remark(Record):
    """A comment. `start` and `end` are offsets; `own_line`: nothing stands before it on its line."""

    text: str
    start: int
    end: int
    own_line: bool


def remarks(text: str) -> Iterator[Remark]:
    """The comments in order, without the blanks at their ends."""
    for found in _QUOTED_OR_REMARK.finditer(text):
        if found[0].startswith("#"):
            line = text.rfind("\n", 0, found.start()) + 1
            yield Remark(found[0].rstrip(), found.start(), found.end(), not text[line : found.start()].strip())
