"""Where one types is told from the text alone, be it half written."""

from __future__ import annotations

import pytest

from rigc.editor.completion.spot import spot


@pytest.mark.parametrize(
    ("text", "block", "name", "words", "begun"),
    [
        ("un|", "", "", (), "un"),
        ("unit tern {\n  dra|", "unit", "tern", (), "dra"),
        ("unit tern {\n  draws 8 m|", "unit", "tern", ("draws", "8"), "m"),
        ("unit tern {\n}\n|", "", "", (), ""),
        ("power {\n  tern from mill5.o|", "power", "", ("tern", "from", "mill5", "."), "o"),
        ("chain guitar -> |", "", "", ("chain", "guitar", "->"), ""),
        ("chain guitar ->\n  tern ->\n  fe|", "", "", ("chain", "guitar", "->", "tern", "->"), "fe"),
        ('unit tern "a { brace" {\n  mass |', "unit", "tern", ("mass",), ""),
        ("unit tern { mass |", "unit", "tern", ("mass",), ""),
        ("mains-strip row-1 {\n  so|", "mains-strip", "row-1", (), "so"),
    ],
)
def test_the_spot(text: str, block: str, name: str, words: tuple[str, ...], begun: str) -> None:
    found = spot(text.replace("|", ""), text.index("|"))
    assert (found.block, found.name, found.words, text[found.start : text.index("|")]) == (block, name, words, begun)


@pytest.mark.parametrize(
    ("text", "within"),
    [
        ('use "stock/|', "text"),
        ('use "stock/|"', "text"),
        ('use "a"|', ""),
        ("mass 4 g # as we|", "comment"),
        ("# {\n|", ""),
    ],
)
def test_inside_texts_and_comments(text: str, within: str) -> None:
    assert spot(text.replace("|", "", 1), text.index("|")).within == within


def test_a_dot_names_the_thing() -> None:
    text = "midi {\n  fan.ou"
    assert spot(text, len(text)).thing == "fan"
    text = "supply m {\n  outlet o1.."
    assert spot(text, len(text)).thing == ""
