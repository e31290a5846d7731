"""What to do for want of a fact: the statement that is told, its blanks filled, is understood in the block that is told."""

from __future__ import annotations

import re

import pytest
from written import compiled_written

from rigc.diagnostics.wanted import how_to_state

BLOCKS = {
    "unit b": "unit b {{\n  {said}\n}}",
    "jack in of unit b": "unit b {{\n  input in ts 1 Mohm {said}\n}}",
    "placed jack in of unit b": "unit b {{\n  input in ts 1 Mohm rear 20 mm {said}\n}}",
    "plug b": "plug b {{\n  {said}\n}}",
    "deck b": "deck b {{\n  {said}\n}}",
    "cable b": "cable b {{\n  {said}\n}}",
    "strip b": "strip b {{\n  {said}\n}}",
    "place": "unit b {{ }}\nplace {{\n  {said}\n}}",
    "mounting": "unit b {{ }}\nmounting {{\n  {said}\n}}",
}
FILLED = {"STRIP": "mushroom", "mates ___": "mates itself"}


@pytest.mark.parametrize(
    ("want", "block"),
    [
        ("the mass of 'b'", "unit b"),
        ("the mass of 'b'", "deck b"),
        ("the height of 'b'", "unit b"),
        ("the body of 'b'", "unit b"),
        ("the height of 'b.in'", "placed jack in of unit b"),
        ("how high 'b.in' is", "placed jack in of unit b"),
        ("where 'b.in' is", "jack in of unit b"),
        ("where 'b.in' is on its body", "jack in of unit b"),
        ("the height of the plug 'b'", "plug b"),
        ("how far from the jack the cable leaves plug 'b'", "plug b"),
        ("where the feet of 'b' are", "deck b"),
        ("the size of deck 'b'", "deck b"),
        ("the thickness of deck 'b'", "deck b"),
        ("the clearance of deck 'b'", "deck b"),
        ("the drop lines of deck 'b'", "deck b"),
        ("the conductors of cable 'b'", "cable b"),
        ("the pull of the strip 'b'", "strip b"),
        ("the width of the strip 'b'", "strip b"),
        ("what the strip 'b' mates with", "strip b"),
        ("the place of 'b'", "place"),
        ("the strip of 'b'", "mounting"),
    ],
)
def test_what_is_told_can_be_written_there(want: str, block: str) -> None:
    told = how_to_state(want)
    assert "'b'" in told or "`b " in told, "it says whose"
    said = told.split("`")[1]
    for blank, word in FILLED.items():
        said = said.replace(blank, word)
    text = BLOCKS[block].format(said=re.sub("___", "20", said))
    assert [each.kind.name for each in compiled_written(text).findings if each.kind.name == "malformed-statement"] == []


def test_a_fact_that_its_words_do_not_place() -> None:
    assert how_to_state("a deck") == "state a deck"
