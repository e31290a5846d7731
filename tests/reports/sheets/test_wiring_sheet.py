"""The wiring sheet: what stands in its blocks. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.reports.content import Paragraph, Sheet, Table
from rigc.reports.sheets.stage.wiring_sheet import wiring_sheet

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")


def sheet_of(text: str) -> Sheet:
    sheet: Sheet = results_of(text).call(wiring_sheet)
    return sheet


def example(name: str) -> Sheet:
    sheet: Sheet = results(ROOT / "examples" / name / "board.rig").call(wiring_sheet)
    return sheet


def texts(sheet: Sheet, name: str) -> list[tuple[str, ...]]:
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [tuple(cell.text for cell in row.cells) for row in table.rows]


def lines(sheet: Sheet, name: str) -> str:
    paragraph = sheet.block(name)
    assert isinstance(paragraph, Paragraph)
    return "\n".join(paragraph.lines)


def test_columns_of_the_signal_order() -> None:
    table = example("back-bedroom").block("signal_1")
    assert isinstance(table, Table)
    heads = ["step", "unit", "zone", "in jack", "out jack", "lead in", "mono/stereo", "level class", "when bypassed"]
    assert [column.head for column in table.columns] == heads


def test_signal_order_of_the_home_rig() -> None:
    # Source of the order: the chain as the rig states it; leads A1 to A7 as it numbers them.
    rows = texts(example("back-bedroom"), "signal_1")
    assert [(row[1], row[5]) for row in rows] == [
        ("guitar", ""),
        ("plumb", "A1"),
        ("hedge", "A2"),
        ("marl", "A3"),
        ("millpond", "A4"),
        ("lant", "A5"),
        ("rotunda", "A6"),
        ("combo", "A7"),
    ]
    assert rows[1][8] == "true bypass; without power: mutes"


def test_a_unit_that_goes_from_mono_to_stereo_says_so() -> None:
    rows = {row[1]: row for row in texts(example("long-haul"), "signal_1")}
    assert rows["weathervane"][6] == "mono in, stereo out"
    assert rows["lantxl"][5:7] == ("A21, A22", "stereo")


def test_one_stereo_jack_is_both_sides() -> None:
    text = (
        block("instrument", "guitar")
        + unit("mixer", "output cue trs stereo")
        + block("listener", "phones", "headphones", "input jack trs stereo")
        + "chain guitar -> mixer.in\nchain ears: mixer.cue -> phones.jack\n"
    )
    table = results_of(text).call(wiring_sheet).block("signal_ears")
    at = [column.head for column in table.columns].index("mono/stereo")
    assert [row.cells[at].text for row in table.rows] == ["stereo", "stereo"]


@pytest.mark.parametrize(("nominal", "said"), [("-15 dBu", "instrument"), ("-14 dBu", "line"), ("4 dBu", "line")])
def test_level_classes(nominal: str, said: str) -> None:
    # The border of -14 dBu lies midway between -20 dBu (instruments) and -7.8 dBu (consumer line): common practice, no source.
    text = GUITAR + COMBO + unit("marl", f"level out {nominal}") + "chain guitar -> marl -> combo\n"
    assert [row[6] for row in texts(sheet_of(text), "signal_1")] == ["not said", said, ""]


def test_loading_of_the_home_rig() -> None:
    # Worked by hand: 630 + 9.45 + 9.45 = 648.9 pF = 81.1 % of 800; + 120 = 768.9 pF; with 4.2 H 2801 Hz.
    sheet = example("back-bedroom")
    assert [row[1:] for row in texts(sheet, "before_first_buffer")] == [
        ("A1", "6", "105", "630"),
        ("A2", "0.09", "105", "9.45"),
        ("A3", "0.09", "105", "9.45"),
    ]
    assert texts(sheet, "before_first_buffer_sums") == [
        ("guitar", "all", "marl", "648.9", "81.1", "800", "120", "768.9", "2801", "")
    ]


def test_loading_of_the_touring_rig() -> None:
    # Worked by hand: 0.8 m x 105 = 84 pF, + 120 = 204 pF: 5437 Hz; on 6 m, 630 + 120 = 750 pF: 2836 Hz.
    expected = ("guitar", "all", "heron", "84", "10.5", "800", "120", "204", "5437", "2836")
    assert texts(example("long-haul"), "before_first_buffer_sums") == [expected]


def test_an_unknown_figure_is_marked_and_its_reason_told() -> None:
    sheet = sheet_of(GUITAR + COMBO + "chain guitar -> combo\n")
    table = sheet.block("before_first_buffer_sums")
    assert isinstance(table, Table)
    assert (table.rows[0].cells[3].text, table.rows[0].cells[3].mark) == ("", "not known")
    assert "Not known: the length of A1 is not known." in lines(sheet, "before_first_buffer_notes")


def test_midi_and_control_of_the_touring_rig() -> None:
    sheet = example("long-haul")
    assert [row[:3] for row in texts(sheet, "midi")] == [
        ("M01", "signalbox.midi", "fan4.in"),
        ("M02", "fan4.t1", "weathervane.midi"),
        ("M03", "fan4.t2", "lantxl.midi"),
        ("M04", "fan4.t3", "rotundaxl.midi"),
    ]
    assert [row[5].split(",")[0] for row in texts(sheet, "midi")] == ["", "1", "2", "3"]
    assert texts(sheet, "control") == [
        ("C01", "lever.out", "lantxl.exp", "C6 → B2", "straight", "expression, tip-wiper, 10 kΩ")
    ]


def test_notes_of_the_source_and_of_things_reach_the_crew() -> None:
    text = (
        'note "up ramp first"\n'
        + GUITAR
        + COMBO
        + unit("marl", 'note "green plug"')
        + "chain guitar -> marl -> combo\n"
    )
    assert lines(sheet_of(text), "crew_notes") == "up ramp first\nmarl: green plug"


def test_the_bypass_plan_is_printed() -> None:
    text = GUITAR + COMBO + unit("marl") + "chain guitar -> marl -> combo\n"
    assert lines(sheet_of(text), "bypass_plan") == "No bypass plan is stated."
    planned = sheet_of(text + 'bypass guitar -> combo "A1 straight into the amp"\n')
    assert lines(planned, "bypass_plan") == "guitar.out → combo.in: A1 straight into the amp"


def test_cautions_stand_first() -> None:
    for sheet in (example("back-bedroom"), example("long-haul")):
        assert sheet.blocks[0].name == "cautions"
        assert "Never lift, cut or tape a protective earth" in lines(sheet, "cautions")
