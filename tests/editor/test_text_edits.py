"""Edits of lines make the one text out of the other, whatever its line ends."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as some

from rigc.editor.text_edits import LineEdit, line_edits


def test_only_the_line_that_differs() -> None:
    assert line_edits("a\nb\nc\n", "a\nB\nc\n") == (LineEdit(1, 2, "B\n"),)
    assert line_edits("a\nc\n", "a\nb\nc\n") == (LineEdit(1, 1, "b\n"),)
    assert line_edits("a\r\nb\r\n", "a\r\n") == (LineEdit(1, 2, ""),)
    assert line_edits("a\n", "a\n") == ()


@given(some.text("ab\n\r", max_size=12), some.text("ab\n\r", max_size=12))
def test_the_edits_make_the_text(old: str, new: str) -> None:
    lines = re.findall(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+\Z", old)
    for each in reversed(line_edits(old, new)):
        lines[each.first : each.last] = [each.text]
    assert "".join(lines) == new
