"""The signal-flow drawing: every thing of every chain, its leads by number, loops, stereo, wireless. Rigs are invented."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import block, results_of, unit

from rigc.reports.content import Drawing, Paragraph, Sheet
from rigc.reports.drawings.shapes import Label, Line, Shape, Symbol
from rigc.reports.sheets.stage.signal_flow import signal_flow

BOARDS = ("examples/long-haul/board.rig", "examples/back-bedroom/board.rig", "examples/tide-line/board.rig")


def drawings(sheet: Sheet) -> list[Drawing]:
    return [each for each in sheet.blocks if isinstance(each, Drawing)]


def shapes(of: tuple[Shape, ...]) -> Iterator[Shape]:
    """All shapes, those of symbols too."""
    for shape in of:
        yield from shapes(shape.shapes) if isinstance(shape, Symbol) else (shape,)


def words(sheet: Sheet) -> list[str]:
    return [shape.text for each in drawings(sheet) for shape in shapes(each.shapes) if isinstance(shape, Label)]


@pytest.mark.parametrize("board", BOARDS)
def test_nothing_leaves_its_ground_or_covers_a_label(board: str) -> None:
    sheet: Sheet = results(ROOT / board).call(signal_flow)
    assert drawings(sheet)
    for each in drawings(sheet):
        assert drawing_faults(each) == ()
        assert overlapping_labels(each) == ()
        assert each.width_mm <= 259 and each.height_mm <= 150


def test_touring_rig() -> None:
    """Every lead of the chains, the eight loops, and the way stated."""
    sheet: Sheet = results(ROOT / BOARDS[0]).call(signal_flow)
    told = words(sheet)
    assert {f"A{number:02}" for number in range(1, 29)} | {"A30", "A31", "wireless"} <= set(told)
    assert [text for text in told if text.startswith("loop ")] == [f"loop {number}" for number in range(1, 9)]
    assert told[0].startswith("Signal runs from left to right")
    assert "Chain left-side, from rear-panel.l" in told


def test_stereo_has_two_lines_and_wireless_is_dotted() -> None:
    sheet: Sheet = results(ROOT / BOARDS[0]).call(signal_flow)
    lines = [shape for each in drawings(sheet) for shape in shapes(each.shapes) if isinstance(shape, Line)]
    assert sum(line.width_mm == 0.25 and line.pattern == "solid" and line.arrow == "end" for line in lines) == 2 * 4
    assert sum(line.pattern == "dotted" for line in lines) == 1


def test_a_long_chain_goes_on_in_the_next_row() -> None:
    names = [f"marl{number}" for number in range(1, 15)]
    text = block("instrument", "guitar") + "".join(unit(name) for name in names)
    sheet: Sheet = results_of(text + f"chain guitar -> {' -> '.join(names)}\n").call(signal_flow)
    assert words(sheet).count("goes on from above") == 1
    assert set(names) <= set(words(sheet))


def test_no_chain() -> None:
    sheet: Sheet = results_of(unit("marl")).call(signal_flow)
    (told,) = sheet.blocks
    assert isinstance(told, Paragraph)
    assert told.lines == ("no chain",)
