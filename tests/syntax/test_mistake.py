"""What a wording can see of a line."""

from __future__ import annotations

from rigc.source import Source, Span
from rigc.syntax.lines_tried import LinesTried
from rigc.syntax.mistake import Mistake

NONE = LinesTried(lambda _block, _line: False, {})


def test_a_wording_sees_a_thousand_signs_to_either_side() -> None:
    """Wordings search what is before and after a place, some from each sign of it: the square of a line without end."""
    text = f"unit plumb {{\n  mass {'x' * 5_000} 300 {'y' * 5_000}\n}}\n"
    at = text.index("300")
    source = Source("board.rig", text)
    mistake = Mistake(Span(source, at, at + 3), "NUMBER", frozenset(), {}, dict, "unit", text, at, NONE)
    assert mistake.before == "x" * 999 + " "
    assert mistake.after == "300 " + "y" * 996
    assert text[mistake.line_start : mistake.line_end] == mistake.before + mistake.after


def test_a_wording_sees_all_of_a_usual_line() -> None:
    text = "unit plumb {\n  mass 300 mm\n}\n"
    at = text.index("mm")
    mistake = Mistake(
        Span(Source("board.rig", text), at, at + 2), "NAME", frozenset(), {}, dict, "unit", text, at, NONE
    )
    assert (mistake.before, mistake.after) == ("  mass 300 ", "mm")
