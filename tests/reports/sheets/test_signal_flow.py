"""The signal-flow drawing: every thing of every chain, its leads by number, loops, stereo, wireless. Rigs are invented."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import block, results_of, unit

from rigc.analysis.signal.signal_steps import SignalSteps
from rigc.reports.content import Drawing, Paragraph, Sheet
from rigc.reports.drawings.flow.rows import LEFT, RIGHT
from rigc.reports.drawings.shapes import Box, Label, Line, Polyline, Shape, Symbol
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
    assert {"left-side, from jack l", "right-side, from jack r", "tuner, from jack tun"} <= set(told)
    for name in ("guitar", "heron", "slipway", "weathervane", "lantxl", "rotundaxl", "canaltwo", "rear-panel", "plumb"):
        assert told.count(name) == 1


def ways(sheet: Sheet) -> list[Line | Polyline]:
    """The lines of leads, which alone have arrows."""
    found = [shape for each in drawings(sheet) for shape in shapes(each.shapes) if isinstance(shape, Line | Polyline)]
    return [line for line in found if line.arrow == "end"]


def boxes(sheet: Sheet) -> dict[str, Box]:
    """The box of each name: the smallest that holds its label."""
    found: dict[str, Box] = {}
    for each in drawings(sheet):
        for _, shape, held in placed(each.shapes):
            if isinstance(shape, Label):
                around = [box for box in held if box.x < shape.x < box.x + box.width]
                around = [box for box in around if box.y < shape.y < box.y + box.height]
                if around:
                    found[shape.text] = min(around, key=lambda box: box.width * box.height)
    return found


def placed(of: tuple[Shape, ...], down: float = 0.0) -> list[tuple[float, Shape, list[Box]]]:
    """Each shape with the boxes of its own group."""
    held = [shape for shape in of if isinstance(shape, Box)]
    found: list[tuple[float, Shape, list[Box]]] = []
    for shape in of:
        inner = placed(shape.shapes, down + shape.y) if isinstance(shape, Symbol) else [(down, shape, held)]
        found += inner
    return found


def test_stereo_has_two_lines_and_wireless_is_dotted() -> None:
    """Four hops in stereo: weathervane to lantxl, to rotundaxl, to canaltwo, to rear-panel."""
    sheet: Sheet = results(ROOT / BOARDS[0]).call(signal_flow)
    lines = ways(sheet)
    assert sum(line.width_mm == 0.25 and line.pattern == "solid" for line in lines) == 2 * 4
    assert sum(line.pattern == "dotted" for line in lines) == 1


def test_the_loops_of_a_switcher_are_closed_turns_in_order() -> None:
    """Each of the eight leads that come back ends at the bar's lower edge, right of where its send left it."""
    sheet: Sheet = results(ROOT / BOARDS[0]).call(signal_flow)
    down = [
        line for line in ways(sheet) if isinstance(line, Polyline) and upright(line) and line.points[0][1] == BAR_FOOT
    ]
    up = [line for line in ways(sheet) if isinstance(line, Polyline) and line.points[-1][1] == BAR_FOOT]
    assert len(down) == len(up) == 8
    for left, right in zip(down, up, strict=True):
        assert left.points[0][0] < right.points[-1][0]


BAR_FOOT = 18.0
"""The way of a row runs 12 mm below its edge, and a bar is 12 mm high."""


def upright(line: Polyline) -> bool:
    return line.points[0][0] == line.points[-1][0]


def test_each_station_bears_its_step_of_the_wiring_sheet() -> None:
    """The touring rig: 25 steps, of which loops' returns stand in the bar; each branch begins its own count at its start."""
    made = results(ROOT / BOARDS[0])
    told = words(made.call(signal_flow))
    steps = {str(int(step.number)) for step in made.get(SignalSteps).chains[0].steps}
    assert len(steps) == 25
    assert steps <= set(told)


def test_outputs_stand_at_one_edge() -> None:
    for board, outputs in ((BOARDS[0], ("left-amp", "right-amp", "plumb")), (BOARDS[2], ("cabin", "front-desk"))):
        found = boxes(results(ROOT / board).call(signal_flow))
        assert {round(found[name].x + found[name].width, 6) for name in outputs} == {RIGHT}


def test_a_long_chain_is_one_line_from_row_to_row() -> None:
    """The lead between two rows runs to the right edge, back to the left and into its unit; no lead lacks a line."""
    names = [f"marl{number}" for number in range(1, 15)]
    text = block("instrument", "guitar") + "".join(unit(name) for name in names)
    sheet: Sheet = results_of(text + f"chain guitar -> {' -> '.join(names)}\n").call(signal_flow)
    turned = [line for line in ways(sheet) if isinstance(line, Polyline) and len(line.points) == 6]
    assert len(ways(sheet)) == 14
    assert len(turned) == 1
    assert turned[0].points[1][0] > RIGHT
    assert turned[0].points[3][0] < LEFT
    assert set(names) <= set(words(sheet))


def test_a_way_that_no_page_holds_says_where_it_goes_on() -> None:
    names = [f"marl{number}" for number in range(1, 81)]
    text = block("instrument", "guitar") + "".join(unit(name) for name in names)
    sheet: Sheet = results_of(text + f"chain guitar -> {' -> '.join(names)}\n").call(signal_flow)
    assert len(drawings(sheet)) == 2
    assert {"to part 2", "from part 1"} <= set(words(sheet))
    assert set(names) <= set(words(sheet))
    for each in drawings(sheet):
        assert drawing_faults(each) == ()
        assert each.height_mm <= 150


def test_a_long_turn_goes_down_and_comes_up_again() -> None:
    """Five units: three down, two up; the seven leads of the turn and of the way are all drawn."""
    names = [f"step{number}" for number in range(1, 6)]
    host = unit("box", "input r1 ts", "output s1 ts", "loop 1 send s1 return r1")
    text = block("instrument", "guitar") + host + "".join(unit(name) for name in names)
    sheet: Sheet = results_of(f"{text}chain guitar -> box\nloop 1 of box holds {' -> '.join(names)}\n").call(
        signal_flow
    )
    tops = {name: found.y for name, found in boxes(sheet).items() if name in names}
    assert tops["step1"] < tops["step2"] < tops["step3"] == tops["step4"] > tops["step5"] == tops["step2"]
    assert len(ways(sheet)) == 1 + 6


def test_a_chain_that_ends_where_another_does_shows_it_dashed() -> None:
    text = block("instrument", "guitar") + block("instrument", "bass") + unit("mixer", "input second ts")
    sheet: Sheet = results_of(f"{text}chain guitar -> mixer.in\nchain bass -> mixer.second\n").call(signal_flow)
    assert words(sheet).count("mixer") == 2
    dashed = [shape for _, shape, _ in placed(drawings(sheet)[0].shapes) if isinstance(shape, Box)]
    assert [shape.pattern for shape in dashed] == ["solid", "solid", "solid", "dashed"]


def test_no_chain() -> None:
    sheet: Sheet = results_of(unit("marl")).call(signal_flow)
    (told,) = sheet.blocks
    assert isinstance(told, Paragraph)
    assert told.lines == ("no chain",)
