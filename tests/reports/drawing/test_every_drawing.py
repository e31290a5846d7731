"""Every drawing of every sheet, on the worked boards: letters stand free, no name is missing, three widths of line, three heights of
letters, nothing is told apart by colour alone, and a legend names what is drawn and nothing else."""

from __future__ import annotations

from collections.abc import Callable, Iterable

import pytest
from cases import ROOT, worked
from every_drawing import DRAWN, drawings, faults, flat

from rigc.reports.content import Drawing, Sheet
from rigc.reports.drawings.shapes import Box, Circle, Label, Line, Polyline, Shape
from rigc.reports.folder import all_sheets
from rigc.reports.front.made import made

BOARDS = (
    *sorted(str(path.relative_to(ROOT)) for path in (ROOT / "examples").glob("*/board.rig")),
    *sorted(str(path.relative_to(ROOT)) for path in (ROOT / "tests/rigs").glob("*.rig")),
)
ALIKE = (
    "examples/long-haul/board.rig",
    "tests/rigs/long-haul-as-ordered.rig",
    "tests/rigs/back-bedroom-as-ordered.rig",
)
"""All but the same as boards that the daily run has."""


@pytest.mark.parametrize(
    "board", [pytest.param(board, marks=[pytest.mark.long] if board in ALIKE else []) for board in BOARDS]
)
def test_every_drawing_of_a_worked_board(board: str) -> None:
    drawn = drawings(worked(board))
    assert drawn or not board.startswith("examples")
    assert faults(drawn) == {}
    assert {name: wrong for name, each in drawn.items() if (wrong := legend_faults(name, each))} == {}


def test_no_other_sheet_holds_a_drawing() -> None:
    of = worked("examples/harbour-keys/board.rig")
    sheets = {
        sheet.name
        for each in all_sheets()
        if isinstance(sheet := made(of, each), Sheet) and any(isinstance(block, Drawing) for block in sheet.blocks)
    }
    assert sheets <= {each.__name__.replace("_", "-") for each in DRAWN}


def legend_faults(name: str, drawing: Drawing) -> list[str]:
    """What a legend in words names and is not drawn, or is drawn and not named."""
    shapes = list(flat(drawing.shapes))
    words = " ".join(shape.text for shape in shapes if isinstance(shape, Label))
    sheet, _, _ = name.partition(" ")
    there = SIGNS.get(sheet)
    if there is None or drawing.name.startswith(("clash", "rear", "side")):
        return []
    return [
        f"{word}: {'not named' if drawn(shapes) else 'not drawn'}"
        for word, drawn in there.items()
        if (word in words) is not drawn(shapes)
    ]


def patterned(pattern: str, *kinds: type[Shape]) -> Callable[[Iterable[Shape]], bool]:
    return lambda shapes: any(isinstance(shape, kinds) and getattr(shape, "pattern", "") == pattern for shape in shapes)


def filled(fill: str, kind: type[Shape]) -> Callable[[Iterable[Shape]], bool]:
    return lambda shapes: any(isinstance(shape, kind) and getattr(shape, "fill", "") == fill for shape in shapes)


def reversing(shapes: Iterable[Shape]) -> bool:
    return any(isinstance(shape, Polyline) and len(shape.points) == 4 and shape.width_mm < 0.5 for shape in shapes)


SIGNS: dict[str, dict[str, Callable[[Iterable[Shape]], bool]]] = {
    "power-table": {
        "dashed: AC": patterned("dashed", Line, Polyline),
        "dash-dot: mains": patterned("dash-dot", Line),
        "dotted: nothing plugged in": patterned("dotted", Line),
        "dot: Y lead": filled("solid", Circle),
        "crossed lines": reversing,
    },
    "signal-flow": {
        "dotted: wireless": patterned("dotted", Polyline),
        "inside a thing": patterned("dashed", Polyline),
        "drawn elsewhere too": patterned("dashed", Box),
    },
    "ground-sheet": {
        "a silent pair": lambda shapes: any(isinstance(shape, Line) and shape.y1 > shape.y2 for shape in shapes),
        "the ground ends": filled("white", Circle),
        "closes a ring": patterned("dash-dot", Line, Polyline),
        "drawn again": patterned("dashed", Box),
    },
}
"""By sheet, words of its legends, and whether what they name is drawn."""
