"""A rig -> every drawing of its folder, and what is wrong with each after drawing practice: letters, widths of line, a grey copy."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from svg_collisions import collisions

from rigc.analysis.results import Results
from rigc.output.svg import inline
from rigc.reports.content import Drawing, Sheet
from rigc.reports.drawings.shapes import (
    HAIR,
    LARGE_LETTERS,
    LETTERS,
    MIDDLE_LETTERS,
    SMALL_LETTERS,
    THICK,
    THIN,
    Label,
    Shape,
    Symbol,
)
from rigc.reports.front.front_page import front_page
from rigc.reports.front.made import made
from rigc.reports.sheets.bench.label_sheet import label_sheet
from rigc.reports.sheets.bench.unit_data_sheets import unit_data_sheets
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.deck.plan_full_size import plan_full_size
from rigc.reports.sheets.ear.loading_table import loading_table
from rigc.reports.sheets.power.ground_sheet import ground_sheet
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.record.overlay import overlay
from rigc.reports.sheets.stage.crew_card import crew_card
from rigc.reports.sheets.stage.preset_sheet import preset_sheet
from rigc.reports.sheets.stage.signal_flow import signal_flow


def front(results: Results) -> Sheet:
    """The front page of a folder without findings and further sheets."""
    return front_page(results, (), (), ())


DRAWN: tuple[Callable[..., Any], ...] = (
    crew_card,
    deck_drawing,
    ground_sheet,
    label_sheet,
    loading_table,
    overlay,
    plan_full_size,
    power_table,
    front,
    preset_sheet,
    signal_flow,
    unit_data_sheets,
)
"""The sheets that hold drawings."""

WIDTHS = {HAIR, THIN, THICK}
HEIGHTS = {LETTERS, MIDDLE_LETTERS, LARGE_LETTERS}


def drawings(of: Results, sheets: Iterable[Callable[..., Any]] = DRAWN) -> dict[str, Drawing]:
    """All drawings of these sheets, by the names of sheet and drawing: `deck-drawing plan-plate`."""
    there = (sheet for each in sheets if isinstance(sheet := made(of, each), Sheet))
    return {
        f"{sheet.name} {block.name}": block for sheet in there for block in sheet.blocks if isinstance(block, Drawing)
    }


def flat(shapes: Iterable[Shape]) -> Iterator[Any]:
    """Shapes without symbols: what these hold stands in their place."""
    for shape in shapes:
        if isinstance(shape, Symbol):
            yield from flat(shape.shapes)
        else:
            yield shape


def faults(drawn: dict[str, Drawing], small: bool = False) -> dict[str, list[str]]:
    """By drawing, what is wrong; `small` letters are for names that find no other place."""
    told = {name: [*collisions(inline(each, "x")), *_practice(each, small)] for name, each in drawn.items()}
    return {name: wrong for name, wrong in told.items() if wrong}


def _practice(drawing: Drawing, small: bool) -> Iterator[str]:
    heights = HEIGHTS | ({SMALL_LETTERS} if small else set())
    shapes = list(flat(drawing.shapes))
    colours: dict[tuple[str, str], set[str]] = {}
    for shape in shapes:
        if isinstance(shape, Label):
            if shape.size_mm not in heights:
                yield f"letters of {shape.size_mm:g} mm: {shape.text}"
            if shape.text.startswith("Without room"):
                yield shape.text
            continue
        if shape.width_mm not in WIDTHS:
            yield f"a line {shape.width_mm:g} mm wide: {shape}"
        ruler = drawing.name.startswith("full-size") and shape.colour == "blue"  # told by its ticks and figures
        if shape.colour != "grey" and not ruler:  # grey: grids and construction lines
            colours.setdefault((shape.pattern, getattr(shape, "fill", "")), set()).add(shape.colour)
    for form, those in colours.items():
        if len(those) > 1:
            yield f"told apart by colour alone, {form}: {', '.join(sorted(those))}"
