"""Two texts of one file -> the lines that differ, each stretch of them an edit, so that an editor keeps its marks and its undo."""

from __future__ import annotations

import difflib
import re

from rigc.record import Record


class LineEdit(Record):
    """The lines from `first` up to (not including) `last`, both from 0, become `text`, with their ends."""

    first: int
    last: int
    text: str


def line_edits(old: str, new: str) -> tuple[LineEdit, ...]:
    """In order; none where the texts are the same. Lines end as the protocol has it: LF, CR LF, or CR."""
    before, after = _lines(old), _lines(new)
    same = 0
    while same < min(len(before), len(after)) and before[same] == after[same]:
        same += 1
    tail = 0
    while tail < min(len(before), len(after)) - same and before[-1 - tail] == after[-1 - tail]:
        tail += 1
    middle = before[same : len(before) - tail], after[same : len(after) - tail]
    matcher = difflib.SequenceMatcher(None, *middle, autojunk=False)
    return tuple(
        LineEdit(same + one, same + two, "".join(middle[1][three:four]))
        for sort, one, two, three, four in matcher.get_opcodes()
        if sort != "equal"
    )


def _lines(text: str) -> list[str]:
    return re.findall(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z", text)
