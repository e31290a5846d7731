"""The sheets of tests, of the built board, of field notes, accepted deviations and history: their cells, worked by hand."""

from __future__ import annotations

from typing import Any

from records_board import board
from written import changed

from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Sheet, Table
from rigc.reports.sheets.bench import test_record
from rigc.reports.sheets.record import accepted_deviations, as_built, field_notes, history

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def sheet(results: Results, maker: Any) -> Sheet:
    made = results.call(maker)
    assert isinstance(made, Sheet)
    return made


def rows(made: Sheet, name: str) -> dict[str, list[str]]:
    table = made.block(name)
    assert isinstance(table, Table)
    return {row.cells[0].text: [cell.text or cell.mark for cell in row.cells[1:]] for row in table.rows}


def words(made: Sheet, name: str) -> str:
    return "\n".join(getattr(made.block(name), "lines"))  # noqa: B009


def test_the_test_record() -> None:
    made = sheet(board(), test_record.SHEET)
    # 0.41 - 0.12 = 0.29 ohm; 12.12 - 12.05 V = 70 mV
    leads = rows(made, "test-3-4")
    assert leads["A18"] == [
        "signalbox.out", "slipway.in", "tip–tip, sleeve–sleeve", "< 0.3", "0.41 Ω", "200 MΩ", "2026-05-12", "T.O., R.K.",
        "3: 0.12 Ω on 2026-03-03: +0.29 Ω",
    ]  # fmt: skip
    assert leads["A19"] == ["slipway.tun", "plumb.in", "tip–tip, sleeve–sleeve", "< 0.3", "", "", "", "", ""]
    assert rows(made, "test-5")["weir8.b5"] == [
        "D13 to heron, 12 V, centre-negative", "11.6 to 12.9 V, expected 12.0 V", "12.12 V", "2026-05-12", "T.O.",
        "12.05 V on 2026-03-03: +70 mV",
    ]  # fmt: skip
    # -20.1 dBu is -0.1 dB of the tone; then -0.2 dB
    assert rows(made, "test-9")["rear-panel.l"][2:] == [
        "−0.2 dB",
        "2026-03-04",
        "T.O.",
        "−20.1 dBu on 2026-03-03: −0.1 dB",
    ]
    assert rows(made, "test-21") == {"long-haul": ["", "no limit is stated", "7 mA", "2026-03-03", "T.O.", ""]}
    assert "nothing on this rig to make these on: 14 mute." in words(made, "reading")
    assert "competent or licensed person" in words(made, "caution_tests")
    assert all(block.tick for block in made.blocks if isinstance(block, Table) and block.name != "signed")


def test_an_outlier_is_marked() -> None:
    table = sheet(board(), test_record.SHEET).block("test-3-4")
    assert isinstance(table, Table)
    (marked,) = (row.cells[5] for row in table.rows if row.cells[5].mark)
    assert (marked.text, marked.mark, marked.strong) == ("0.41 Ω", "OUTSIDE", True)


def test_the_board_as_built() -> None:
    made = sheet(board(), as_built.SHEET)
    assert words(made, "state") == "The board is revision B with changes 1 and 3 of C; change 2 is open."
    leads = rows(made, "leads")
    # the cable list: A01 route 1142 mm, 1260 finished; least 1142 + 30, most 1.1 x 1142 + 150 = 1406.2
    assert leads["A01"][2:7] == ["1260", "780", "−480", "1172 to 1406", "TOO SHORT"]
    assert leads["A18"][2:8] == ["740", "740", "0", "695 to 881", "keep", "barrel-angle to flat-angle"]
    # D13 is bought as 600 mm; route 530 mm, 570 at least, 1.1 x 530 + 150 = 733 at most
    assert leads["D13"][2:] == ["600", "733.1", "+133.1", "570 to 733", "TOO LONG", "as designed", "", ""]
    assert words(made, "not-measured").startswith("45 of 48: A02, A03,")
    assert rows(made, "changes")["2"][-2:] == ["heron", "open"]
    assert rows(made, "swaps")["lantxl"] == [
        "lantxl-2",
        "3",
        "A21  .inl, weathervane.outl\nA22  .inr, weathervane.outr\nA23  .outl, rotundaxl.inl\nA24  .outr, rotundaxl.inr\n"
        "C01  .exp, lever.out\nM03  .midi, fan4.t2\nD11  .dc, weir8.b3",
        "weir8.b3 at 9 V DC",
        "1 Plain\n2 Drive\n3 Lift\n4 Wall",
        "Salt Road\nNight Ferry\nLong Haul",
    ]
    assert words(made, "notes") == "the rear bracket of mill8 is a longer one"


def test_what_the_board_is() -> None:
    base = ("  done 1, 3\n", "")
    assert (
        words(sheet(board(base), as_built.SHEET), "state")
        == "The board is revision B: none of the changes of C is done."
    )
    base = ("  done 1, 3\n", "  done 3, 1, 2\n")
    assert words(sheet(board(base), as_built.SHEET), "state") == "The board is C: all its changes are done."
    other = (("as-built C {", "as-built B {"), ("  done 1, 3\n", "  done 2\n"), ('  follows B "board-b.rig"\n', ""))
    assert (
        words(sheet(board(*other), as_built.SHEET), "state")
        == "The board is revision B with change 2 of C; changes 1 and 3 are open."
    )


def test_field_notes() -> None:
    made = sheet(board(), field_notes.SHEET)
    assert rows(made, "notes") == {
        "1": ["2026-02-19", "one strip more below marl", "T.O.", "older than revision C", "", "", ""],
        "2": ["2026-02-20", "A07 chafed at the rear slot, taped", "T.O.", "folded", "", "", ""],
        "3": [
            "2026-05-11",
            "lantxl died in Lisbon, the spare stands in its place",
            "T.O.",
            "OPEN",
            "lantxl",
            "lantxl-2",
            "",
        ],
    }
    assert made.block("form").caption == "Field note no. 4 (to fill in)"  # type: ignore[union-attr]


def test_accepted_deviations() -> None:
    made = rows(sheet(board(), accepted_deviations.SHEET), "accepted")
    assert made["too-heavy"][1::2][0] == "long-haul"
    assert made["too-heavy"][3:] == ["two of us carry it", "R.K.", "2026-12-31", "NOT SIGNED", "holds", ""]
    assert made["brighter-guitar"][1] == "all of this rule"
    assert made["brighter-guitar"][3:] == [
        "the player likes it brighter",
        "R.K.",
        "2026-03-01",
        "NOT SIGNED",
        "ENDED",
        "",
    ]


def test_history() -> None:
    made = sheet(
        board(("  change 1 ", '  frozen 2026-03-05 by "R.K." seal "9a1f03-7c41d0"\n  change 1 ')), history.SHEET
    )
    told = rows(made, "revision")
    assert told["follows"] == ["revision B, board-b.rig"]
    assert told["frozen"] == ["2026-03-05 by R.K."]
    assert told["seal"] == ["9a1f03-7c41d0"]
    assert rows(made, "changes")["1"] == [
        "the design was edited",
        "the pitch unit stands behind the distortion",
        "it tracks worse behind the fuzz",
        "stepladder, A14, D08",
        "done",
    ]


def test_sheets_with_nothing_to_say_are_left_out() -> None:
    """A home rig has no form for the road; a touring one has, though nothing happened yet."""
    home, touring = changed(HOME), changed(TOURING)
    for maker in (as_built.SHEET, field_notes.SHEET, accepted_deviations.SHEET):
        assert isinstance(home.call(maker), NoSheet)
    assert rows(sheet(touring, field_notes.SHEET), "notes") == {}
    assert rows(sheet(home, history.SHEET), "revision")["frozen"] == ["not frozen: may still change"]
