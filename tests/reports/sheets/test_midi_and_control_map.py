"""The MIDI and control map of the touring board (worked by hand), and how it marks what is not known."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit
from written import changed

from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Paragraph, Sheet, Table
from rigc.reports.sheets.stage.midi_and_control_map import midi_and_control_map

TOURING = "examples/long-haul/board.rig"


def rows(of: Results, name: str) -> list[dict[str, str]]:
    """The rows of a table by their headings, marks in brackets behind the text."""
    sheet: Sheet = of.call(midi_and_control_map)
    table = sheet.block(name)
    assert isinstance(table, Table)
    heads = [column.key or column.head for column in table.columns]
    texts = [[f"{cell.text} [{cell.mark}]" if cell.mark else cell.text for cell in row.cells] for row in table.rows]
    return [dict(zip(heads, row, strict=True)) for row in texts]


def midi(*lines: str) -> str:
    return "midi {\n" + "".join(f"  {line}\n" for line in lines) + "}\n"


def test_the_touring_board() -> None:
    """Master, splitter, three units; 340 + 720 mm to the last; every unit through one thru of the splitter."""
    found = {row["unit"]: row for row in rows(results(ROOT / TOURING), "midi_map")}
    assert list(found) == ["signalbox", "fan4", "weathervane", "lantxl", "rotundaxl"]
    assert found["rotundaxl"] == {
        "unit": "rotundaxl",
        "firmware": "",
        "channel": "3",
        "program_offset": "1",
        "messages": "program change in presets 1…4",
        "leads": "M01, M04",
        "port": "fan4.t3",
        "thru stages": "1",
        "length": "1500",
        "clock source": "",
    }
    assert found["signalbox"]["clock source"] == "its own"
    assert found["fan4"]["channel"] == ""


def test_the_treadle_of_the_touring_board() -> None:
    """Tip-wiper, three conductors, 10 kohm, 700 mm."""
    (lead,) = rows(results(ROOT / TOURING), "control_leads")
    assert (lead["lead"], lead["from"], lead["to"]) == ("C01", "lever.out", "lantxl.exp")
    assert (lead["tip"], lead["ring"], lead["sleeve"]) == ("wiper", "supply", "ground")
    assert (lead["track"], lead["conductors"], lead["length"]) == ("10", "3", "700")


def test_a_treadle_that_does_not_suit_its_jack() -> None:
    """Ring-wiper into tip-wiper: marked; the contacts told are those that the jack wants."""
    made = changed(TOURING, ("expression out out trs tip-wiper 10 kohm", "expression out out trs ring-wiper 25 kohm"))
    (lead,) = rows(made, "control_leads")
    assert lead["kind"] == "expression, tip-wiper [ENDS DIFFER]"
    assert lead["track"] == "25 to 10"


def test_what_is_not_stated_is_marked() -> None:
    """Channel, program offset, TRS type, length."""
    box = block("unit", "box", "midi out m1 mini-trs type a", "midi out m2 mini-trs")
    made = results_of(
        box
        + unit("lant", "midi in midi din")
        + unit("hum", "midi in midi mini-trs")
        + midi("box.m1 -> lant.midi", "box.m2 -> hum.midi", "lant channel 1")
    )
    lant, hum = rows(made, "midi_map")
    assert (lant["channel"], lant["program_offset"], lant["length"]) == ("1", " [not stated]", " [not known]")
    assert hum["channel"] == " [not stated]"
    first, second = rows(made, "midi_leads")
    assert first["wired"] == "pin 5 to tip, pin 4 to ring; pin 2 to sleeve at the sending end only"
    assert second["wired"] == " [type not stated]"


def test_a_length_that_leans_on_an_assumed_fact_is_marked() -> None:
    """The thickness of the deck is assumed: every lead under it, and every way along them, is marked."""
    made = changed(TOURING, ("  thickness 12 mm\n", "  thickness 12 mm assumed\n"))
    assert [row["length"] for row in rows(made, "midi_leads")] == [f"{mm} [assumed]" for mm in (600, 600, 600, 900)]
    assert rows(made, "midi_map")[-1]["length"] == "1500 [assumed]"
    assert rows(made, "control_leads")[0]["length"] == "700 [assumed]"


@pytest.mark.parametrize(
    ("start", "end", "wired"),
    [
        ("din", "din", "pins 4–4 and 5–5; pin 2 at the sending end only"),
        ("din", "mini-trs type a", "pin 5 to tip, pin 4 to ring; pin 2 to sleeve at the sending end only"),
        ("mini-trs type b", "din", "pin 4 to tip, pin 5 to ring; pin 2 to sleeve at the sending end only"),
        ("mini-trs type a", "trs type a", "tip–tip, ring–ring; sleeve at the sending end only"),
        ("mini-trs type a", "mini-trs type b", "tip–tip, ring–ring; sleeve at the sending end only [TYPES DIFFER]"),
        ("mini-trs type tip", "din", "tip only: as the unit's leaflet says"),
    ],
)
def test_how_a_lead_is_wired(start: str, end: str, wired: str) -> None:
    """Tip = DIN 5, ring = DIN 4, sleeve = DIN 2 (type A: MIDI Association RP-054); type B the other way (trade description)."""
    things = block("unit", "box", f"midi out midi {start}") + unit("lant", f"midi in midi {end}")
    (row,) = rows(results_of(things + midi("box.midi -> lant.midi")), "midi_leads")
    assert row["wired"] == wired


def test_clock() -> None:
    """A unit that follows is told whose clock: the master's, or that of another that sends it; or that none reaches it."""
    made = results_of(
        block("unit", "box", "midi out m1 din", "midi out m2 din")
        + block("unit", "beat", "midi out m1 din", "clock sends")
        + block("unit", "other", "midi out m1 din")
        + unit("lant", "midi in midi din", "clock follows", 'firmware "1.42"')
        + unit("hum", "midi in midi din", "clock follows")
        + unit("mere", "midi in midi din", "clock follows")
        + unit("fen", "midi in midi din")
        + midi(
            "master box", "box.m1 -> lant.midi", "other.m1 -> hum.midi", "beat.m1 -> mere.midi", "box.m2 -> fen.midi"
        )
    )
    assert [row["firmware"] for row in rows(made, "midi_map")] == ["", "1.42", "", "", ""]
    assert [(row["unit"], row["clock source"]) for row in rows(made, "midi_map")] == [
        ("box", "its own"),
        ("lant", "box"),
        ("hum", " [no sender reaches it]"),
        ("mere", "beat"),
        ("fen", ""),
    ]


def test_figures_and_cautions() -> None:
    """Byte times of MIDI 1.0: 2 x 0.32 and 3 x 0.32 ms; three program changes 1.92 ms; the cautions stand on the sheet."""
    sheet: Sheet = results(ROOT / TOURING).call(midi_and_control_map)
    figures = sheet.block("midi_timing")
    assert isinstance(figures, Paragraph)
    assert figures.lines[0] == "Free channels: 4…16."
    assert "a program change 0.64 ms, a control change 0.96 ms" in figures.lines[1]
    assert figures.lines[2].startswith("The longest preset change takes 1.92 ms")
    caution = sheet.block("caution_control")
    assert isinstance(caution, Paragraph) and caution.kind == "caution"
    for word in ("protective earth", "merge"):
        assert any(word in line for line in caution.lines)


def test_without_midi_and_control_leads_there_is_no_sheet() -> None:
    found = results(ROOT / "examples/back-bedroom/board.rig").call(midi_and_control_map)
    assert isinstance(found, NoSheet)
    assert found.reason == "No MIDI and no control lead is stated for this rig."


def test_a_source_is_master() -> None:
    made = results(ROOT / "tests/syntax/sentences/195-synthesizer-as-master.rig")
    keys, lant = rows(made, "midi_map")
    assert (keys["unit"], keys["leads"], keys["clock source"]) == ("keys", "master", "its own")
    assert (lant["leads"], lant["port"]) == ("M1", "straight from keys.midi")
