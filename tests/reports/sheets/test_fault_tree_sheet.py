"""Fault tree: its cells, from the example with three places, and from the one with a switcher."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled

from rigc.reports.content import Paragraph, Sheet, Table


def sheet(example: str) -> Sheet:
    (made,) = compiled(ROOT / "examples" / example / "board.rig").sheets(("fault-tree",))
    return made


def rows(sheet: Sheet, name: str) -> list[list[str]]:
    block = sheet.block(name)
    assert isinstance(block, Table)
    return [[cell.text for cell in row.cells] for row in block.rows]


@pytest.fixture(scope="module")
def quay() -> Sheet:
    return sheet("tide-line")


def test_where_it_begins(quay: Sheet) -> None:
    assert rows(quay, "begin-hall-baritone") == [
        ["cabin.back, front-desk.ch", "nothing", "line 1", "4"],
        ["cabin.back", "front-desk.ch", "line 10", "3"],
        ["front-desk.ch", "cabin.back", "line 16", "1"],
    ]


def test_lines_go_on_within_their_symptom(quay: Sheet) -> None:
    assert rows(quay, "questions-hall-baritone-3") == [["16", "ferry.di → front-desk.ch", "B5", "A9", "front-desk"]]
    assert rows(quay, "questions-kitchen-baritone-1")[0] == ["1", "baritone.out → ferry.in", "C5", "line 2", "line 9"]


def test_what_helps_is_told_once(quay: Sheet) -> None:
    """At the quay the leads and units of the hall are mended as there; what a part of the rig silences together is told anew."""
    assert [row[0] for row in rows(quay, "repairs-quay-baritone")] == [
        "estuary, D4, lee.w4 or lee or its mains lead",
        "baritone, ferry or front-desk",
    ]


def test_a_loop_is_left_out_at_a_press() -> None:
    told = {row[0]: row[1:] for row in rows(sheet("long-haul"), "repairs")}
    assert told["A04, A05, settle, D02 or mill8.a2"] == ["signalbox: loop 2 out", "settle", "0"]


def test_the_care_of_a_hand_in_a_hurry(quay: Sheet) -> None:
    care = quay.block("care")
    assert isinstance(care, Paragraph)
    assert care.kind == "caution"
    assert any("Never lift a protective earth" in line for line in care.lines)
