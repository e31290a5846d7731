"""Places that the compiler chose are marked wherever a sheet prints them. The rig is invented."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.deck.mass_and_balance import mass_and_balance
from rigc.reports.sheets.deck.mounting_strips import mounting_strips
from rigc.reports.sheets.deck.plan_full_size import plan_full_size

LINE = (
    "The place of plumb was chosen, not stated, and may move when the source changes: "
    "`rigc pin` writes it into the source, and so keeps it."
)


def board(plumb: str = "plumb left of marl") -> Results:
    text = block("deck", "plate", "size 300 x 200 mm", "thickness 12 mm", "mass 1 kg")
    text += block("strip", "grip", "wide 25 mm", "mates itself", "pull 30 kPa")
    text += block("mounting", "", "all with grip")
    text += unit("marl", "body 70 x 120 x 55 mm", "mass 0.4 kg")
    text += unit("plumb", "body 70 x 120 x 55 mm", "mass 0.4 kg")
    return results_of(text + block("place", "", "marl at 150, 20 mm", plumb))


def marked(sheet: Sheet, name: str, thing: str) -> dict[str, str]:
    """Heading -> mark of a thing's row."""
    table = sheet.block(name)
    assert isinstance(table, Table)
    row = next(row for row in table.rows if row.cells[0].text == thing)
    return {column.head: cell.mark for column, cell in zip(table.columns, row.cells, strict=True) if cell.mark}


def told(sheet: Sheet) -> tuple[str, ...]:
    return next((block.lines for block in sheet.blocks if isinstance(block, Paragraph) and block.name == "chosen"), ())


@pytest.mark.parametrize(
    ("sheet", "table", "heads"),
    [
        (deck_drawing, "places-plate", {"x": "chosen", "y": "chosen", "zone": "chosen"}),
        (mass_and_balance, "items", {"x": "chosen", "y": "chosen"}),
        (mounting_strips, "strips", {"on the deck: pieces at x, y": "chosen"}),
    ],
)
def test_a_chosen_place_is_marked_and_a_stated_one_is_not(
    sheet: Callable[..., Sheet], table: str, heads: dict[str, str]
) -> None:
    made = board().call(sheet)
    assert marked(made, table, "plumb") == heads
    assert marked(made, table, "marl") == {}
    assert told(made) == (LINE,)


def test_the_plans_say_it() -> None:
    of = board()
    plan = of.call(deck_drawing).block("plan-plate")
    assert isinstance(plan, Drawing)
    assert plan.caption == LINE
    assert told(of.call(plan_full_size)) == (LINE,)


@pytest.mark.parametrize("sheet", [deck_drawing, mass_and_balance, mounting_strips, plan_full_size])
def test_where_all_places_are_stated_nothing_is_said(sheet: Callable[..., Sheet]) -> None:
    assert told(board("plumb at 20, 20 mm").call(sheet)) == ()
