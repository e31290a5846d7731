"""Text made harmless: for Markdown, for a CSS string, for narrow columns."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rigc.output.escapes import cell, css_string, held, line, pieces, printable


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("a|b", r"a\|b"),
        ("<b>", "&lt;b>"),
        ("&lt; R&B", "&amp;lt; R&B"),
        ("C:\\new", r"C:\\new"),
        ("`x`", r"\`x\`"),
        ("one\r\ntwo\nthree", "one<br>two<br>three"),
        ("snake_case _em_", r"snake_case \_em\_"),
        ("*b* [l](u) ~s~ $m$", r"\*b\* \[l\](u) \~s\~ \$m\$"),
        ("שלום 🎸 é", "שלום 🎸 é"),
        ("  bell\x07 ", "bell"),
    ],
)
def test_nothing_in_a_cell_acts_as_markdown(text: str, safe: str) -> None:
    assert cell(text) == safe


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("# one", r"\# one"),
        ("#1 lead", "#1 lead"),
        ("- dash", r"\- dash"),
        ("+ plus", r"\+ plus"),
        ("===", r"\==="),
        ("1. first", r"1\. first"),
        ("2) second", r"2\) second"),
        ("1.5 mm", "1.5 mm"),
    ],
)
def test_the_start_of_a_line_makes_no_heading_list_or_rule(text: str, safe: str) -> None:
    assert line(text) == safe


@given(st.text())
def test_a_cell_stays_on_one_line_with_every_pipe_escaped(text: str) -> None:
    safe = cell(text)
    assert len(safe.splitlines()) <= 1
    assert safe.replace("\\\\", "").replace("\\|", "").count("|") == 0
    assert "<" not in safe.replace("<br>", "")


@given(st.text())
def test_no_text_ends_a_css_string_or_the_style(text: str) -> None:
    inside = css_string(text)[1:-1]
    assert not set(inside) & set('"<>{};\n')


@given(st.text())
def test_pieces_joined_are_the_text(text: str) -> None:
    assert "".join(pieces(text)) == text
    assert all(len(word) <= 12 for piece in pieces(text) for word in piece.split())


def test_pieces_part_names_and_long_words_but_no_numbers() -> None:
    assert pieces("volume_treadle.out left") == ["volume_", "treadle.", "out left"]
    assert pieces("6.35 mm, -20") == ["6.35 mm, -20"]
    assert pieces("by R.K.") == ["by R.K."]
    assert pieces(held("60 g/m")) == ["60\u00a0g/m"]
    assert pieces("abcdefghijklmn") == ["abcdefghijkl", "mn"]


def test_a_name_cannot_steer_the_terminal() -> None:
    assert printable("a\x1b[2Jb\nc") == "a [2Jb c"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("D03 to bramble, 9 V", "D03 to bramble, 9~V"),
        ("≤ 0.1 ohm and the lead's own", "≤~0.1~ohm and the lead's own"),
        ("84.22 Ω/km at 20 °C", "84.22~Ω/km at 20~°C"),
        ("2 Vans of preset 3 m1", "2 Vans of preset 3 m1"),
        ("70 × 120 × 55", "70~×~120~×~55"),
        ("-70 dB of -20 dBu", "-70~dB of -20~dBu"),
    ],
)
def test_a_number_is_held_to_its_unit(text: str, shown: str) -> None:
    assert held(text) == shown.replace("~", "\u00a0")
