"""The loop table of the touring board, which the wiring sheet cites."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.reports.content import NoSheet, Paragraph, Sheet, Table
from rigc.reports.front.sheet_codes import see
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
    cited = wiring.block("loops")
    assert isinstance(cited, Paragraph)
    assert see("loop-table") in cited.lines[0]


def test_what_is_held_what_is_empty_and_what_nobody_says() -> None:
    box = unit("box", "output s1..s3 ts", "input r1..r3 ts", "loop 1..3 send s1..s3 return r1..r3")
    text = (
        block("instrument", "guitar")
        + block("amp", "combo", "input in ts")
        + box
        + unit("marl")
        + unit("lant", "tails")
        + "chain guitar -> box -> combo\n"
    )
    text += "loop 1 of box holds marl -> lant\nloop 2 of box empty\n"
    text += block("preset", "4", "loops 1") + block("preset", "6", "loops 1, 2")
    text += "leads {\n  A3 box.s1 -> marl.in\n  A5 lant.out -> box.r1\n}\n"
    table = results_of(text).call(loop_table).block("loops")
    assert [tuple(cell.text for cell in row.cells) for row in table.rows] == [
        ("box 1", "s1, r1", "marl → lant", "mono", "A3", "A5", "4, 6", "yes", "no"),
        ("box 2", "s2, r2", "", "", "", "", "6", "", "empty"),
        ("box 3", "s3, r3", "", "", "", "", "", "", "not said"),
    ]


def test_an_amps_own_loop_that_a_chain_wires() -> None:
    """Past a panel's jacks, which are none of what it holds."""
    text = (
        block("instrument", "guitar")
        + block("amp", "combo", "input in ts", "output send ts", "input back ts", "loop 1 send send return back series")
        + unit("marl")
        + unit("lant", "tails")
        + block("deck", "plank", "size 400 x 300 mm")
        + block("panel", "rear on plank", "jack s ts at 380, 290 mm")
        + "chain guitar -> combo\nchain back: combo.send -> rear.s -> marl -> lant -> combo.back\n"
        + "leads {\n  A1 combo.send -> rear.s\n  A2 lant.out -> combo.back\n}\n"
    )
    table = results_of(text).call(loop_table).block("loops")
    (row,) = table.rows
    assert [cell.text for cell in row.cells] == [
        "combo 1", "send, back", "marl → lant", "mono", "A1", "A2", "", "yes", "no",
    ]  # fmt: skip


def test_without_loops_there_is_no_sheet() -> None:
    found = results(ROOT / "examples/back-bedroom/board.rig").call(loop_table)
    assert found == NoSheet("loop-table", "Loop table", "Nothing on this rig has a loop.")
