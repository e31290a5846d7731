"""Letters in the drawings of a deck stand free: counted from their SVG, on the worked boards and on decks dealt by dice."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import ROOT, compiled, results
from dealt_decks import dealt_deck
from svg_collisions import collisions, painted

from rigc.analysis.results import Results
from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet
from rigc.reports.drawings.shapes import Box, Circle, Label, Line
from rigc.reports.sheets.deck.deck_drawing import deck_drawing

EXAMPLES = sorted(path.parent.name for path in (ROOT / "examples").glob("*/board.rig"))
COUNTED = ("plan", "bare", "below")
DEALT, QUICK = 30, 6


def drawings(of: Results) -> list[Drawing]:
    sheet: Sheet = of.call(deck_drawing)
    return [
        block
        for block in sheet.blocks
        if isinstance(block, Drawing) and block.name.split("-", maxsplit=1)[0] in COUNTED
    ]


def faults(of: Results) -> dict[str, list[str]]:
    """By drawing, what collides, and what found no room within it."""
    found = {}
    for drawing in drawings(of):
        told = collisions(inline(drawing, "x"))
        if told:
            found[drawing.name] = told
    return found


@pytest.mark.parametrize("board", EXAMPLES)
def test_nothing_collides_on_the_worked_boards_and_every_name_is_in_its_place(board: str) -> None:
    of = results(ROOT / f"examples/{board}/board.rig")
    assert faults(of) == {}
    for drawing in drawings(of):
        assert "Without room" not in inline(drawing, "x"), drawing.name


@pytest.mark.parametrize(
    "seed", [*range(QUICK), *(pytest.param(seed, marks=pytest.mark.long) for seed in range(QUICK, DEALT))]
)
def test_nothing_collides_on_dealt_decks(seed: int, tmp_path: Path) -> None:
    (tmp_path / "board.rig").write_text(dealt_deck(seed), encoding="utf-8")
    made = compiled(tmp_path / "board.rig", root=tmp_path)
    assert made.results is not None, [finding.message for finding in made.findings]
    assert faults(made.results) == {}
    texts = " ".join(text.words for drawing in drawings(made.results) for text in painted(inline(drawing, "x")).texts)
    assert set(made.results.rig.units) <= set(texts.replace(";", "").replace(":", "").split())


def drawn(*shapes: Label | Line | Box | Circle) -> list[str]:
    return collisions(inline(Drawing("bad", "Bad", "faults", 60, 30, shapes), "x"))


def test_the_count_sees_each_kind_of_fault() -> None:
    """Without this the tests above could not fail."""
    name = Label(10, 10, "marl")
    assert drawn(name) == []
    assert drawn(name, Label(12, 10, "lant")) == ["'marl' and 'lant'"]
    assert drawn(name, Line(5, 9, 30, 9)) == ["'marl' on a line at 13.7, 9.0"]
    assert [fault[:16] for fault in drawn(name, Box(9, 5, 3, 20))] == ["'marl' on a line"]
    assert "'marl' is covered" in drawn(name, Box(9, 5, 12, 20, fill="white"))
    assert drawn(Line(5, 9, 30, 9), Box(2, 2, 40, 20, fill="white"), name) == []
    assert drawn(Label(10, 10, "gap"), Line(5, 10.6, 30, 10.6)) != []  # a descender
    assert drawn(name, Line(5, 10.6, 30, 10.6)) == []
