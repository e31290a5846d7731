"""A board of leads that are not straight (invented): what each is stands on every sheet on which a hand acts."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

import pytest
from cases import ROOT, results

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.results import Results
from rigc.analysis.tests.due_tests import DueTests
from rigc.reports.content import Drawing, NoSheet, Sheet, Table
from rigc.reports.drawings.shapes import Label
from rigc.reports.sheets.bench.cable_list import cable_list
from rigc.reports.sheets.bench.cut_list import cut_list
from rigc.reports.sheets.bench.label_sheet import label_sheet
from rigc.reports.sheets.bench.pull_list import pull_list
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.stage.midi_and_control_map import midi_and_control_map
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet


@lru_cache(maxsize=1)
def made() -> Results:
    return results(ROOT / "tests" / "rigs" / "odd-leads.rig")


def rows(sheet: Callable[..., Sheet | NoSheet], *tables: str) -> dict[str, str]:
    """The rows of a sheet's tables by their first cell, the cells joined, marks in brackets."""
    page = made().call(sheet)
    assert isinstance(page, Sheet)
    blocks = [block for block in page.blocks if isinstance(block, Table)]
    found = [row for block in blocks if not tables or block.name in tables for row in block.rows]
    told = [[cell.text + (f" [{cell.mark}]" if cell.mark else "") for cell in row.cells] for row in found]
    return {cells[0]: " | ".join(cells[1:]) for cells in told}


def drawn(sheet: Callable[..., Sheet]) -> set[str]:
    """All that is written in a sheet's drawings."""
    blocks = [block for block in made().call(sheet).blocks if isinstance(block, Drawing)]
    return {shape.text for block in blocks for shape in block.shapes if isinstance(shape, Label)}


@pytest.mark.parametrize(
    ("mark", "says"),
    [
        ("D1a", "leg of the Y lead D1"),
        ("D2", "REVERSED: + and − change places between its plugs"),
        ("D3", "by the series lead Y1, from the pair's UPPER outlet"),
        ("D4", "by the series lead Y1, from the pair's LOWER outlet"),
        ("AC1", "9 | AC | straight"),
        ("D1", "Y lead: legs D1a, D1b"),
        ("Y1", "18 | DC | series lead: behind D3, D4"),
        ("C1", "CROSSED: tip to ring, ring to tip, sleeve to sleeve"),
        ("M1", "CROSSED: tip to ring, ring to tip, sleeve to sleeve, type A to type B"),
    ],
)
def test_the_wiring_sheet(mark: str, says: str) -> None:
    assert says in rows(wiring_sheet, "power_leads", "midi", "control")[mark]


@pytest.mark.parametrize(
    ("mark", "says"),
    [
        ("D1a", "mill.o1 / far sedge.dc / 9 V DC LEG OF Y D1"),
        ("D2", "rush.dc / far mill.o2 / 9 V DC REVERSED"),
        ("D3", "iris.dc / far mill.o3 / 9 V DC SERIES Y1 UPPER"),
        ("AC1", "cress.dc / far kettle.w / 9 V AC"),
        ("C1", "sluice.out / far bulrush.exp / CROSSED"),
        ("M1", "bulrush.midi / far weir.midi / CROSSED A TO B"),
        ("D1", "Y 9 V DC / mill.o1 / to sedge + reed ONLY"),
        ("Y1", "SERIES 18 V DC / mill.o3 + mill.o4 (LOWER) / to iris ONLY"),
        ("D5", "urn.w / far bulrush.dc / 9 V DC, centre − | bulrush.dc / far urn.w / 9 V DC, centre − | 2"),
    ],
)
def test_the_label_sheet(mark: str, says: str) -> None:
    blocks = [block for block in made().call(label_sheet).blocks if isinstance(block, Table)]
    found = {row.cells[1].text: " | ".join(cell.text for cell in row.cells) for row in blocks[0].rows}
    assert says in found[mark]


def test_the_pull_list_hands_out_no_straight_lead_for_them() -> None:
    """One lead is straight and bought: AC1, 300 mm. D5 comes with its brick."""
    items = list(rows(pull_list))
    assert [item for item in items if "lead" in item] == [
        "ac lead 300 mm",
        "C1: control lead 340 mm, CROSSED",
        "M1: midi lead 600 mm, CROSSED A to B",
        "D2: dc lead 300 mm, REVERSED",
        "D3: dc lead 300 mm, series Y1 upper",
        "D4: dc lead 300 mm, series Y1 lower",
        "D1: dc Y lead, legs of 600 mm and 450 mm",
        "Y1: series lead for iris",
    ]


def test_the_test_record_tests_each_as_it_is_made() -> None:
    due = {(each.test, each.point): each for each in made().get(DueTests).all}
    assert due[5, "mill.o2"].beside == "D2 to rush, REVERSED, 9 V, centre-positive"
    assert due[5, "mill.o3"].beside == "D3 to iris, series Y1 upper, 9 V, centre-negative"
    assert due[5, "kettle.w"].beside == "AC1 to cress, 9 V AC, no polarity"
    assert due[5, "urn.w"].beside == "D5 to bulrush, 9 V, centre-negative"
    assert due[6, "iris"].beside == "D3 (series Y1 upper), D4 (series Y1 lower), 18 V"
    assert due[20, "C1"].beside == "sluice.out to bulrush.exp, CROSSED: tip–ring, ring–tip, sleeve–sleeve"
    assert due[20, "M1"].beside.startswith("weir.midi to bulrush.midi, CROSSED: tip–ring, ring–tip")


def test_the_lists_of_the_bench() -> None:
    assert "C1 [CROSSED]" in rows(cut_list, "cut-list")["control-3"]
    listed = rows(cable_list, "leads")
    assert listed["D2"].startswith("dc [REVERSED] |") and listed["D2"].endswith("| buy, 300 mm")
    assert listed["AC1"].startswith("ac |") and "| ac-24 |" in listed["AC1"]
    assert listed["D5"].startswith("dc | urn.w | bulrush.dc | captive | dc-angle |  |")
    assert listed["D5"].endswith("| keep, 900 mm")
    assert "CROSSED: tip–ring, ring–tip, sleeve–sleeve" in rows(midi_and_control_map, "control_leads")["C1"]


def test_the_drawings_bear_their_signs() -> None:
    assert {"AC1", "D2", "REVERSED, centre-positive", "D3 upper", "D4 lower", "Y1 series", "D1", "D1a"} <= drawn(
        power_table
    )
    assert {"AC1 ~", "D2 ±", "D3 +Y1, D4 +Y1", "D1a Y", "C1 ×", "M1 ×", "reversing", "crossed"} <= drawn(deck_drawing)


def test_a_captive_brick_lead_is_there_and_weighs_with_the_brick() -> None:
    (lead,) = [each for each in made().get(Leads).all if each.mark == "D5"]
    length = made().get(CableLengths).lengths["D5"]
    assert (str(lead.captive), lead.cable, length.supplied, length.cut, length.premade) == (
        "urn.w",
        None,
        9000,
        None,
        None,
    )
