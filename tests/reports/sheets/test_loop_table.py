"""The loop table of the touring board, on its own page: the same rows as on the wiring sheet."""

from __future__ import annotations

from cases import ROOT, results

from rigc.reports.content import NoSheet, Sheet, Table
from rigc.reports.sheets.stage.loop_table import loop_table
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet


def test_the_touring_board() -> None:
    """Eight loops; loop 4 holds marl by A08 and A09 and is used by presets 2 and 3."""
    made = results(ROOT / "examples" / "long-haul" / "board.rig")
    sheet: Sheet = made.call(loop_table)
    table = sheet.block("loops")
    assert isinstance(table, Table)
    assert len(table.rows) == 8
    assert [cell.text for cell in table.rows[3].cells] == [
        "signalbox 4", "s4, r4", "marl", "mono", "A08", "A09", "2, 3", "no", "no",
    ]  # fmt: skip
    wiring: Sheet = made.call(wiring_sheet)
    assert wiring.block("loops") == table


def test_without_loops_there_is_no_sheet() -> None:
    found = results(ROOT / "examples/back-bedroom/board.rig").call(loop_table)
    assert found == NoSheet("loop-table", "Loop table", "Nothing on this rig has a loop.")
