"""The level table: what stands in its blocks. Rigs are invented; figures are those of the worked rigs."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.reports.content import Cell, Paragraph, Sheet, Table
from rigc.reports.sheets.ear.level_table import level_table

GUITAR = block("instrument", "guitar", "level out -20 dBu peak 4 dBu")
COMBO = block("amp", "combo", "input in ts", "level in max 11 dBu")
SHINGLE = unit("shingle", "analogue", "gain 0 dB", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1")


def example(name: str) -> Sheet:
    sheet: Sheet = results(ROOT / "examples" / name / "board.rig").call(level_table)
    return sheet


def sheet_of(*parts: str) -> Sheet:
    sheet: Sheet = results_of("".join(parts)).call(level_table)
    return sheet


def rows(sheet: Sheet, name: str) -> list[tuple[Cell, ...]]:
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [row.cells for row in table.rows]


def texts(sheet: Sheet, name: str) -> list[tuple[str, ...]]:
    return [tuple(cell.text for cell in row) for row in rows(sheet, name)]


def test_columns() -> None:
    # The columns of the trade's level table: edge, nominal, peak, what the input takes, margin, action.
    table = example("back-bedroom").block("levels")
    assert isinstance(table, Table)
    assert [column.head for column in table.columns] == [
        "lead",
        "edge",
        "nominal",
        "peak",
        "max in",
        "margin",
        "action",
    ]
    assert [column.unit for column in table.columns] == ["", "", "dBu", "dBu", "dBu", "dB", ""]


def test_the_home_rig() -> None:
    sheet = example("back-bedroom")
    assert texts(sheet, "levels")[0] == ("A1", "guitar.out → plumb.in", "−20", "4", "11", "7", "")
    assert {row[5] for row in texts(sheet, "levels")} == {"7"}
    assert texts(sheet, "parallel_paths") == []


def test_thirteen_decibels_at_eighteen_volts() -> None:
    found = {row[1]: row[5] for row in texts(example("long-haul"), "levels")}
    assert found.pop("signalbox.s5 → lapwing.in") == "13"
    assert set(found.values()) == {"7", ""}  # blank at the two panel jacks
    assert [row[0] for row in texts(example("long-haul"), "parallel_paths")] == ["left-amp, right-amp"]


def test_what_runs_side_by_side() -> None:
    blend, loop = texts(example("tide-line"), "parallel_paths")
    assert blend == (
        "shingle",
        "dry 50 %; wet through groyne, fathom 50 % inverted",
        "opposite while 'groyne' is off",
        "3",
        "167, 500, 833",
        "3.1",
        "notches: all is lost; lost at 82.41 Hz, the low E of a guitar, with groyne off",
    )
    assert loop[0] == "cabin, own loop (kitchen, hall)" and loop[3] == "+1.5" and loop[6] == "loop in series"


def test_what_to_do() -> None:
    # 16 dBu into 11 dBu: 5 too much, 8 dB to pad; R1/R2 = 10^(8/20) - 1 = 1.512.
    sheet = sheet_of(
        GUITAR, unit("marl", "gain 12 dB", "level in max 11 dBu"), COMBO, "chain guitar -> marl -> combo\n"
    )
    assert texts(sheet, "levels")[0][4:] == ("11", "−5", "pad of at least 8 dB (R1/R2 ≥ 1.51)")
    assert texts(example("tide-line"), "levels")[0][6].startswith("raise by at least 2 dB")


def test_unknown_is_told_and_not_guessed() -> None:
    sheet = sheet_of(GUITAR, unit("marl"), COMBO, "chain guitar -> marl -> combo\n")
    first, second = rows(sheet, "levels")
    assert (first[4].text, first[4].mark, first[5].text) == ("?", "can't check", "?")
    assert first[6].text == "find out what marl.in takes"
    assert [(cell.text, cell.mark) for cell in second[2:4]] == [("?", "can't check")] * 2
    assert second[6].text == "find out what marl gives"


def test_unknown_latency_and_polarity_are_marked() -> None:
    hum = unit("hum", "digital", "inverts unknown", "gain 0 dB")
    blend = block("blend", "shingle", "dry 50 %", "wet 50 % through hum") + "chain guitar -> shingle -> combo\n"
    (row,) = rows(sheet_of(GUITAR, SHINGLE, hum, COMBO, blend), "parallel_paths")
    assert [(cell.text, cell.mark) for cell in row[2:6]] == [
        ("unknown: hum", "can't check"),
        ("?", "can't check"),
        ("?", "can't check"),
        ("?", "can't check"),
    ]


def test_dry_sound_in_a_wet_path_is_remarked() -> None:
    lant = unit("lant", "digital", "delay", "tails", "latency 0 ms", "gain 0 dB")
    blend = block("blend", "shingle", "dry 50 %", "wet 50 % through lant") + "chain guitar -> shingle -> combo\n"
    (row,) = texts(sheet_of(GUITAR, SHINGLE, lant, COMBO, blend), "parallel_paths")
    assert row[6] == "lant leaves dry sound in a wet path; the tail of lant rings on behind the send"


def test_an_assumed_level_is_marked() -> None:
    guitar = block("instrument", "guitar", "level out -20 dBu peak 4 dBu assumed")
    (row,) = rows(sheet_of(guitar, COMBO, "chain guitar -> combo\n"), "levels")
    assert [cell.mark for cell in row[2:6]] == ["assumed", "assumed", "", "assumed"]


def test_sources_and_cautions_are_shown() -> None:
    sheet = example("tide-line")
    cautions, reading = sheet.block("cautions"), sheet.block("reading")
    assert isinstance(cautions, Paragraph) and isinstance(reading, Paragraph)
    assert cautions.kind == "caution" and "loudspeaker output" in "\n".join(cautions.lines)
    said = "\n".join(reading.lines)
    for words in ("0.7746 V", "common practice, no source", "82.41 Hz", "ISO 16", "from memory"):
        assert words in said


def test_the_lowest_note_of_each_instrument() -> None:
    bass = block("instrument", "bass", "lowest note 41.2 Hz")
    reading = sheet_of(GUITAR, bass, COMBO, "chain with guitar: guitar -> combo\n").block("reading")
    assert isinstance(reading, Paragraph)
    assert reading.lines[-2:] == (
        "Lowest note of guitar: not stated, a guitar's low E is taken.",
        "Lowest note of bass: 41.2 Hz.",
    )


def test_a_lead_that_is_louder_with_another_instrument_says_with_which() -> None:
    """Nothing but the instrument tells the two apart; there is no scenario."""
    nylon = block("instrument", "nylon", "level out -12 dBu peak 4 dBu")
    chains = "chain with guitar: guitar -> marl -> combo\nchain with nylon: nylon -> marl -> combo\n"
    sheet = sheet_of(GUITAR, nylon, COMBO, unit("marl", "gain 0 dB"), chains)
    told = {row[1]: row[2] for row in texts(sheet, "levels")}
    assert told["marl.out → combo.in (guitar)"] == "−20"
    assert told["marl.out → combo.in (nylon)"] == "−12"
