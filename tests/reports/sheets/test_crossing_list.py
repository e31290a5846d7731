"""The crossing list (Crossing and separation list): its rows follow the columns of the trade, its verdicts the limits."""

from __future__ import annotations

from cases import ROOT, results
from written import written

from rigc.analysis.routes.crossings import Crossings
from rigc.reports.content import Sheet, Table
from rigc.reports.sheets.deck.crossing_list import crossing_list

BESIDE = ROOT / "tests/analysis/checks/cases/lead-beside-power"


def rows(sheet: Sheet, name: str) -> list[tuple[str, ...]]:
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [tuple(" ".join(filter(None, (cell.text, cell.mark))) for cell in row.cells) for row in table.rows]


def test_columns() -> None:
    sheet: Sheet = results(BESIDE / "dc-beside-it.rig").call(crossing_list)
    table = sheet.block("crossings")
    assert isinstance(table, Table)
    assert [column.head for column in table.columns] == [
        "lead 1", "lead 2", "classes", "angle", "parallel", "distance", "verdict",
    ]  # fmt: skip


def test_a_run_that_is_too_long() -> None:
    sheet: Sheet = results(BESIDE / "dc-beside-it.rig").call(crossing_list)
    told = "too long side by side; in the state 'all off' a pickup drives A2 look"
    assert ("A2", "D1", "audio, dc", "", "212", "25", told) in rows(sheet, "crossings")


def test_what_is_to_be_looked_at_stands_first_and_plain_crossings_share_a_row() -> None:
    """Every pair is told once; a shared row has neither a length nor a remark."""
    found = rows(results(ROOT / "examples/long-haul/board.rig").call(crossing_list), "crossings")
    looked = [row[-1].endswith("look") for row in found]
    assert looked == sorted(looked, reverse=True)
    assert any(looked)
    shared = [row for row in found if ", " in row[1]]
    assert shared
    assert all(row[4:] == ("", "", "fine") for row in shared)
    pairs = [(row[0], other) for row in found for other in row[1].split(", ")]
    assert len(pairs) == len(set(pairs)) == len(results(ROOT / "examples/long-haul/board.rig").get(Crossings).all)


def test_one_that_is_tied_on_purpose() -> None:
    sheet: Sheet = results(BESIDE / "tied-on-purpose.rig").call(crossing_list)
    (row,) = [row for row in rows(sheet, "crossings") if row[:2] == ("A2", "D1")]
    assert row[-1].startswith("tied on purpose")
    assert ("tied", "A2, D1", "", "stated") in rows(sheet, "bundles")


def test_the_home_board() -> None:
    sheet: Sheet = results(ROOT / "examples/back-bedroom/board.rig").call(crossing_list)
    assert {row[-1] for row in rows(sheet, "crossings")} == {"fine"}
    assert rows(sheet, "bundles") == [("dc", "D2b, D5", "105", "one class, one way")]
    # A4: its ends at y = 90 and 242 took 65 and 220: 25 + 155 + 22 = 202; both at 145: 55 + 97 = 152
    assert rows(sheet, "joint-choice") == [("A4", "65, 220", "145, 145", "50")]


def test_without_a_deck_it_says_that_there_is_nothing() -> None:
    sheet: Sheet = written("").call(crossing_list)
    assert rows(sheet, "crossings") == []
