"""Tables whose reader looks for a place on the board tell its zone. The rig is invented: a deck of 800 x 300 mm, zones of 100 x 50 mm."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

import pytest
from small_rigs import block
from written import written

from rigc.analysis.results import Results
from rigc.reports.content import Sheet, Table
from rigc.reports.sheets.bench.label_sheet import label_sheet
from rigc.reports.sheets.bench.pull_list import pull_list
from rigc.reports.sheets.deck.mounting_strips import mounting_strips
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.stage.fault_tree import fault_tree
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet

DC = ("inlet dc barrel 5.5 x 2.1 mm rear 40 mm up 20 mm", "needs 9 V dc", "draws 10 mA")
RIG = (
    block("instrument", "guitar")
    + block("amp", "combo", "input in ts")
    + block("unit", "tern", "body 80 x 100 x 50 mm", "mass 300 g", "input in ts right 60 mm up 20 mm",
           "output out ts left 60 mm up 20 mm", *DC)
    + block("supply", "brook", "body 120 x 60 x 40 mm", "connector barrel 5.5 x 2.1 mm",
            "outlet o1 9 V dc 200 mA isolated rear 60 mm")
    + "chain guitar -> tern -> combo\n"
    + block("power", "", "tern from brook.o1")
    + block("place", "", "tern at 310, 10 mm", "brook at 10, 200 mm")
    + block("mounting", "", "brook brackets", "tern with hook")
)  # fmt: skip
DECK = block("deck", "plate", "size 800 x 300 mm")
"""tern: middle (350, 60), E4; its inlet (350, 110), D4. brook: middle (70, 230), B1; its outlet (70, 260), A1."""

TOLD = [
    (wiring_sheet, "signal_1", ["", "E4", ""]),
    (wiring_sheet, "power_leads", ["A1 → D4"]),
    (power_table, "by_outlet", ["A1"]),
    (power_table, "by_unit", ["E4"]),
    (label_sheet, "markers", ["E4", "E4", "A1 → D4"]),
    (mounting_strips, "strips", ["E4"]),
    (pull_list, "pull-list", ["B1"]),
    (fault_tree, "questions-1", ["E4", "E4"]),
]


@cache
def results(with_deck: bool) -> Results:
    return written(RIG + (DECK if with_deck else "deck plate {\n}\n"))


def zones(sheet: Callable[..., object], table: str, with_deck: bool) -> list[str] | None:
    """The cells of the column of zones; None where there is no such column."""
    made = results(with_deck).call(sheet)
    assert isinstance(made, Sheet)
    block = made.block(table)
    assert isinstance(block, Table)
    at = next((at for at, column in enumerate(block.columns) if column.head == "zone"), None)
    return None if at is None else [row.cells[at].text for row in block.rows]


@pytest.mark.parametrize(("sheet", "table", "told"), TOLD)
def test_the_zone_is_told(sheet: Callable[..., object], table: str, told: list[str]) -> None:
    found = zones(sheet, table, True)
    assert found is not None
    assert [each for each in found if each] == [each for each in told if each]


@pytest.mark.parametrize(("sheet", "table", "told"), TOLD)
def test_no_column_of_zones_without_a_deck(sheet: Callable[..., object], table: str, told: list[str]) -> None:
    assert told
    assert zones(sheet, table, False) is None
