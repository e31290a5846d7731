"""The rework sheet of the touring rig's step from C to D, half done too, and of boards on which all else changes.
Rigs are invented."""

from __future__ import annotations

import pytest
from small_rigs import results_of
from two_boards import LONG_HAUL, LONG_HAUL_D, results_after

from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Paragraph, Sheet, Table
from rigc.reports.sheets.record.rework import rework

pytestmark = pytest.mark.usefixtures("names_anywhere")

CHANGES = (
    '  change 1 design "the larger pitch unit, as the player asked" touches stepladder-ii, A14, A15, D07, D08, Y1\n'
    '  change 2 design "the delay moves to the other supply" touches echomill, D16\n'
)
LATER = LONG_HAUL.replace("  revision C", "  revision D")


def made(of: Results) -> Sheet:
    sheet: Sheet = of.call(rework)
    assert isinstance(sheet, Sheet)
    return sheet


@pytest.fixture(scope="module")
def sheet() -> Sheet:
    return made(results_after(LONG_HAUL, LONG_HAUL_D, CHANGES))


def rows(sheet: Sheet, name: str) -> list[list[str]]:
    """The texts of a table's rows, with the marks behind them."""
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [[f"{cell.text} {cell.mark}".strip() for cell in row.cells] for row in table.rows]


def lines(sheet: Sheet, name: str) -> tuple[str, ...]:
    paragraph = sheet.block(name)
    assert isinstance(paragraph, Paragraph)
    return paragraph.lines


def test_without_a_revision_before_there_is_none() -> None:
    assert isinstance(results_of("").call(rework), NoSheet)


def test_the_order_is_that_of_the_crew(sheet: Sheet) -> None:
    names = (
        "player time bring power-off steps leads outlets strips labels programs tests not-needed way-back folder signed"
    )
    assert [block.name for block in sheet.blocks] == names.split()


def test_what_the_player_notices(sheet: Sheet) -> None:
    """The switch was at 470 + 35 = 505 mm, and is at 455 + 55 = 510."""
    assert lines(sheet, "player") == (
        "stepladder-ii stands in for stepladder (a guess): set its knobs.",
        "The switch of stepladder-ii: 5 mm to the right.",
    )


def test_what_it_takes(sheet: Sheet) -> None:
    """On the board: power off 2; three ends out 1.5 and one 0.5; off 4; peel 5; strip 5; lay D16 4; two ends into Y1
    1; D16's 0.5; four plugs measured 8; set down 3; three ends in 1.5, D16's 0.5; eight labels 12; two leads laid
    anew 6; twelve readings 24; bag 3: 81.5, so 82. Beforehand: strip 8, eleven labels 11: 19."""
    told = lines(sheet, "time")
    assert "On the board 82 min; beforehand 19 min." in told
    assert "Board without case 21.82 → 22.00 kg (Y1 not weighed)." in told
    assert told[0] == "Change 1 (design): the larger pitch unit, as the player asked."


def test_parts(sheet: Sheet) -> None:
    assert rows(sheet, "bring") == [
        ["stepladder-ii", "mushroom 2 × 105 laid under it", "8", "1"],
        ["mushroom", "2 × 105 for the deck, stepladder-ii", "", "1"],
        ["Y1", "parallel adaptor for stepladder-ii", "", "1"],
        ["D16", "dc lead 450 mm, dc-24", "", "2"],
        ["9 labels", "printed: A14, A15, D07, D08, Y1", "9", "1"],
        ["2 labels", "printed: D16", "2", "2"],
    ]


def test_steps_in_bench_order(sheet: Sheet) -> None:
    """No DC plug goes into its unit before it is measured; each unit stands before it is plugged in."""
    assert [row[0] for row in rows(sheet, "steps")] == [
        "power off, mains lead out; photograph both sides",
        "unplug A14, A15, D08 at stepladder",
        "unplug D07 at echomill",
        "take off stepladder, 470, 325 mm",
        "peel the strip of stepladder off the deck",
        "lay strip on the deck for stepladder-ii",
        "lay D16: weir8.b8 → echomill.dc",
        "plug D07, D08 into Y1",
        "plug D16 into weir8",
        "mains in; test 5 at the free plug: Y1, mill8.a7, mill8.a8, weir8.b8; mains out",
        "set down stepladder-ii: 455, 325 mm",
        "plug A14, A15, Y1 into stepladder-ii",
        "plug D16 into echomill",
        "change the labels of A14, A15, D07, D08",
        "lay A14, A15 the new way and tie",
        "test again, 12 readings (below)",
        "bag what came off, mark the bag",
    ]


def test_leads(sheet: Sheet) -> None:
    assert rows(sheet, "leads") == [
        ["A14", "keep, re-dress, re-label", "stepladder.in → stepladder-ii.in", "E3 → A5", "830", "736…926.6", "", "1"],
        [
            "A15",
            "keep, re-dress, re-label",
            "stepladder.out → stepladder-ii.out",
            "A5 → E3",
            "710",
            "648…829.8",
            "",
            "1",
        ],
        [
            "D07",
            "keep, move end to Y1, re-label",
            "echomill.dc → stepladder-ii.dc by Y1",
            "D3 → A5",
            "900",
            "648…900",
            "",
            "1",
        ],
        [
            "D08",
            "keep, via Y1, re-label",
            "stepladder.dc → stepladder-ii.dc by Y1",
            "D3 → A5",
            "900",
            "621…900",
            "",
            "1",
        ],
        ["D16", "new", "weir8.b8 to echomill.dc", "B5 → A6", "450", "319…456.9", "2 × dc-angle", "2"],
    ]
    table = sheet.block("leads")
    assert isinstance(table, Table) and table.caption == (
        "Leads, kept from route + least slack to 1.1 × route + 150 mm; the other 46 stay as they are"
    )


def test_outlets_and_strips(sheet: Sheet) -> None:
    assert rows(sheet, "outlets") == [
        ["mill8.a7", "D3", "echomill", "stepladder-ii by Y1, 320/450 mA", "9", "160 → 160", "64 → 71.1", "D07", "1"],
        ["mill8.a8", "D3", "stepladder", "stepladder-ii by Y1, 320/450 mA", "9", "190 → 160", "76 → 71.1", "D08", "1"],
        ["weir8.b8", "B5", "–", "echomill", "9", "0 → 160", "0 → 64", "D16", "2"],
        ["mill8 in all", "", "3.897 W", "3.627 W", "", "433 → 403", "39.4 → 36.6", "", ""],
        ["weir8 in all", "", "15.210 W", "16.650 W", "", "1565 → 1725", "67.6 → 74", "", ""],
    ]
    assert rows(sheet, "strips") == [
        ["stepladder-ii", "B5", "", "base, deck 2 × 105", "1"],
        ["stepladder", "B5", "base, deck 2 × 105", "", "1"],
    ]


def test_labels(sheet: Sheet) -> None:
    table = sheet.block("labels")
    assert isinstance(table, Table) and table.caption == "Labels: 11 to print, 8 old ones to destroy"
    assert rows(sheet, "labels")[0] == [
        "A14",
        "A14 signalbox.s7 / far stepladder-ii.in",
        "A14 stepladder-ii.in / far signalbox.s7",
        "both",
    ]


def test_tests(sheet: Sheet) -> None:
    found = [[cell.strip() for cell in row] for row in rows(sheet, "tests")]
    assert ["5 power plug", "mill8.a7, mill8.a8, weir8.b8", "8.7 to 9.9 V", "", "1, 2"] in found
    assert [
        "6 voltage under load",
        "stepladder-ii (loop 7), echomill (loop 8), fan4",
        "at least 8.55 V",
        "",
        "1, 2",
    ] in found


def test_sheets_to_swap_are_those_that_say_something_else(sheet: Sheet) -> None:
    """The preset sheet and the MIDI map name neither of the two units, the lists do."""
    told = " ".join(lines(sheet, "folder"))
    assert "old ones to shred" in told and "new in their heads alone" in told


def test_half_done() -> None:
    """What belongs to change 2 is marked, and its time is not asked for again: D16's 4 + 0.5 + 0.5 on the board, two
    labels before."""
    new = LONG_HAUL_D + "\nas-built C {\n  done 2\n}\n"
    sheet = made(results_after(LONG_HAUL, new, CHANGES))
    assert [row[0] for row in rows(sheet, "leads")] == ["A14", "A15", "D07", "D08", "D16 done"]
    told = lines(sheet, "time")
    assert "Change 2 (design) DONE: the delay moves to the other supply." in told
    assert "On the board 77 min; beforehand 17 min." in told
    assert ["plug D16 into echomill done", "B6", "½", "2"] in rows(sheet, "steps")


def test_a_unit_moves_and_a_preset_and_a_channel_change() -> None:
    new = (
        LATER.replace("  fan4 under at 560, 200 mm", "  fan4 under at 500, 200 mm")
        .replace("weathervane channel 1", "weathervane channel 5")
        .replace("loops 3, 6 of signalbox", "loops 3, 5 of signalbox")
    )
    sheet = made(results_after(LONG_HAUL, new))
    assert rows(sheet, "programs") == [
        ["preset 4", "loop 6 of signalbox", "loop 5 of signalbox"],
        ["weathervane", "channel 1", "channel 5"],
    ]
    assert "set down fan4: under 560, 200 mm → under 500, 200 mm" in [row[0] for row in rows(sheet, "steps")]
    assert "Preset 4: entered anew, to be tried." in lines(sheet, "player")


def test_a_unit_goes_and_its_leads_are_kept_as_spares() -> None:
    new = LATER.replace("loop 4 of signalbox holds marl", "loop 4 of signalbox empty")
    gone = ("  marl from mill8.a4\n", "  marl at 227, 175 mm\n")
    for line in gone:
        new = new.replace(line, "")
    new = "\n".join(line for line in new.split("\n") if "marl." not in line)
    sheet = made(results_after(LONG_HAUL, new))
    verdicts = {row[0]: row[1] for row in rows(sheet, "leads")}
    assert set(verdicts) == {"A08", "A09", "D04"} and set(verdicts.values()) <= {"pull and store", "pull and bin"}
    assert lines(sheet, "way-back")[0].startswith("Keep marl, A08, A09 and D04 in one bag")
    assert "Loop 4 of signalbox: marl → nothing." in lines(sheet, "player")


def test_a_lead_that_serves_under_another_number() -> None:
    """A99 of C lies between the very jacks of A27 of D."""
    sheet = made(results_after(LONG_HAUL.replace("  A27 canaltwo", "  A99 canaltwo"), LATER))
    assert "A99 serves as A27: state A99 in revision D, then its number stays." in lines(sheet, "time")
    assert ["A27", "keep: A99 becomes A27, re-label", "B7 → A8", "230", "230…370"] in rows(sheet, "leads")


def test_nothing_to_do() -> None:
    sheet = made(results_after(LONG_HAUL, LATER))
    assert not rows(sheet, "steps") and not rows(sheet, "leads") and not rows(sheet, "bring")
    assert lines(sheet, "player") == ("Nothing: it plays as before.",)


def test_a_unit_bears_another_name() -> None:
    """Its leads stay, but every label that names it is printed anew: two on each of A08, A09 and D04."""
    new = LATER.replace("marl", "merle")
    header = next(line for line in new.split("\n") if line.startswith("unit merle"))
    new = new.replace(header, f"{header}\n  was marl")
    sheet = made(results_after(LONG_HAUL, new))
    assert lines(sheet, "player") == ("marl is called merle now.",)
    assert {row[0]: row[1] for row in rows(sheet, "leads")} == dict.fromkeys(("A08", "A09", "D04"), "keep, re-label")
    table = sheet.block("labels")
    assert isinstance(table, Table) and table.caption == "Labels: 6 to print, 6 old ones to destroy"
    told = " ".join(lines(sheet, "folder"))
    assert "new in their heads alone" in told


def test_a_plug_of_another_kind_is_fitted() -> None:
    """The flat plug takes in its length of the lead that is there: what is left stays in the window."""
    lead = "  A02 signalbox.s1 -> teeter.in barrel-angle to "
    sheet = made(results_after(LONG_HAUL, LATER.replace(f"{lead}barrel-angle", f"{lead}flat-angle")))
    assert rows(sheet, "leads")[0][:2] == ["A02", "keep, re-terminate end B"]
    assert "A02 for teeter.in: cut off the plug, fit flat-angle" in [row[0] for row in rows(sheet, "steps")]
    assert {row[0] for row in rows(sheet, "tests")} >= {"3 audio lead", "4 audio lead"}


def test_a_sheet_that_fails_is_one_to_look_at(monkeypatch: pytest.MonkeyPatch) -> None:
    """The rework is there although another sheet of the folder can't be made; that one is to be printed anew."""
    from rigc.reports.sheets.bench import cable_list

    def broken(results: Results) -> Sheet:
        raise RuntimeError(results.rig.head.name)

    broken.__name__ = cable_list.SHEET.__name__
    monkeypatch.setattr(cable_list, "SHEET", broken)
    sheet = made(results_after(LONG_HAUL, LATER))
    assert "B2" in lines(sheet, "folder")[0].removeprefix("new, old ones to shred: ").split(", ")


def test_all_that_moved_the_same_way_is_one_line_for_the_player() -> None:
    moved = LATER.replace("marl at 227, 175", "marl at 230, 175").replace("settle at 447, 175", "settle at 450, 175")
    assert lines(made(results_after(LONG_HAUL, moved)), "player") == (
        "The switches of marl, settle: 3 mm to the right.",
    )


def test_strip_on_a_deck_that_goes_stays_on_it() -> None:
    """The old deck is kept for the way back as it is: nothing is peeled off it, and new pieces are laid on the other."""
    other = LATER.replace("size 920 x 480 mm", "size 940 x 480 mm")
    strips = {row[0]: row[2:] for row in rows(made(results_after(LONG_HAUL, other)), "strips")}
    assert strips["marl"] == ["deck 2 × 100"]
