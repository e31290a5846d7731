"""The loading table of the worked boards (figures worked by hand on paper), and how it tells what is not known."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.results import Results
from rigc.diagnostics.figures import corner_khz
from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.plot import STYLES
from rigc.reports.drawings.shapes import Label, Polyline
from rigc.reports.sheets.ear.loading_table import loading_table
from rigc.traced.units import PICOFARADS, RESPONSE_DECIBELS

HOME, TOURING = ROOT / "examples/back-bedroom/board.rig", ROOT / "examples/long-haul/board.rig"
COAX = block("cable", "coax", "carries audio", "capacitance 100 pF/m")
OWN = ("inductance 4 H", "resistance 8 kohm", "capacitance 100 pF", "volume 500 kohm", "tone 500 kohm 22 nF")
GUITAR = block("instrument", "guitar", *OWN, "lead 3 m of coax")
COMBO = block("amp", "combo", "input in ts 1 Mohm")


def rows(made: Results, name: str) -> list[dict[str, str]]:
    """The rows of a table by their headings, marks in brackets behind the text."""
    sheet: Sheet = made.call(loading_table)
    table = sheet.block(name)
    assert isinstance(table, Table)
    heads = [column.key or column.head for column in table.columns]
    texts = [[f"{cell.text} [{cell.mark}]" if cell.mark else cell.text for cell in row.cells] for row in table.rows]
    return [dict(zip(heads, row, strict=True)) for row in texts]


def drawings(made: Results) -> list[Drawing]:
    sheet: Sheet = made.call(loading_table)
    return [each for each in sheet.blocks if isinstance(each, Drawing)]


def test_the_home_rig() -> None:
    # 6.18 m: 648.9 pF, with the pickup 768.9 pF, 2801 Hz unloaded; with the fuzz on 759.45 pF and 2818 Hz, and no peak.
    found = rows(results(HOME), "sections")
    first = found[0]
    assert (first["section"], first["leads"]) == ("guitar.out → marl.in", "A1, A2, A3")
    assert first["state"] == "every state but plumb alone on, hedge alone on, everything on"
    assert (first["length"], first["per metre"], first["cable"], first["total"]) == ("6.18", "105", "648.9", "768.9")
    assert (first["source"], first["load"], first["unloaded resonance"]) == ("pickup", "1 MΩ", "2801")
    assert (first["treble corner"], first["loss"], first["verdict"]) == ("", "", "ok")
    (fuzz,) = (row for row in found if row["state"] == "hedge alone on" and row["source"] == "pickup")
    assert (fuzz["unloaded resonance"], fuzz["peak"], fuzz["load"]) == ("2818", "none", "12 kΩ")
    (into,) = (row for row in found if row["section"] == "plumb.out → hedge.in")
    assert into["verdict"] == "feeds a unit that wants the pickup: its loss is not judged"


def test_the_touring_rig() -> None:
    # The treadle: 25k/4 = 6.25 kohm into 63 pF: 404.2 kHz; 1 Mohm on it loses 20 log10(1/1.00625) = 0.05 dB.
    found = {row["section"]: row for row in rows(results(TOURING), "sections")}
    treadle = found["slipway.out → weathervane.inl"]
    assert (treadle["source"], treadle["cable"]) == ("6.25 kΩ (a quarter of the track)", "63")
    assert (treadle["treble corner"], treadle["loss"], treadle["verdict"]) == ("404", "−0.05", "ok")
    assert treadle["state"] == "every state"
    assert all("FAIL" not in row["verdict"] and "not known" not in row["verdict"] for row in found.values())


def test_the_curves_bear_the_numbers_of_the_table() -> None:
    made = results(HOME)
    (drawing,) = drawings(made)
    names = [shape.text for shape in drawing.shapes if isinstance(shape, Label)]
    table = rows(made, "responses")
    assert [row["curve"] for row in table] == ["1", "2", "3"]
    assert [name for name in names if name[:2] in ("1 ", "2 ", "3 ") or name == "plain lead"] == [
        "1 all off …",
        "2 plumb alone on, everything on",
        "3 hedge alone on",
        "plain lead",
    ]
    assert f"peaks at {table[0]['peak']} Hz" in drawing.desc
    assert "curve '3 hedge alone on' has no peak" in drawing.desc
    assert f"{table[0]['peak']} Hz" in names, "its peak is marked"


def test_the_difference_from_the_plain_lead() -> None:
    # On its plain lead alone nothing differs; through the air the touring guitar is louder at 5 kHz.
    alone = rows(results_of(COAX + GUITAR + COMBO + "chain guitar -> combo\n"), "responses")[0]
    assert (alone["plain_100hz"], alone["plain_1khz"], alone["plain_5khz"]) == ("0", "0", "0")
    air = rows(results(TOURING), "responses")[0]
    assert 9 < float(air["plain_5khz"]) < 11
    assert float(air["peak"]) > 4500


def test_a_volume_control_at_nought_is_silent() -> None:
    """No level, no peak and no fall: not minus infinity, and no corner at 100 Hz."""
    guitar = GUITAR.replace("volume 500 kohm", "volume 500 kohm at 0 %")
    row = rows(results_of(COAX + guitar + COMBO + "chain guitar -> combo\n"), "responses")[0]
    assert (row["peak"], row["peak level"], row["fallen"]) == ("none", "", "none")
    assert {text for key, text in row.items() if key.startswith(("at_", "plain_"))} == {"silent"}


def test_more_curves_than_can_be_told_apart_are_spread_over_plots() -> None:
    units = "".join(unit(f"u{at}", "bypass true", "unpowered passes") for at in range(9)).replace(
        "in ts", "in ts 1 Mohm"
    )
    chain = "chain guitar -> " + " -> ".join(f"u{at}" for at in range(9)) + " -> combo\n"
    leads = "".join(f"  A{at} u{at}.out -> u{at + 1}.in of coax made {at + 1} m\n" for at in range(8))
    last = "  A9 u8.out -> combo.in of coax made 1 m\n"
    made = results_of(COAX + GUITAR + COMBO + units + chain + "leads {\n" + leads + last + "}\n")
    found = drawings(made)
    assert [drawing.name for drawing in found] == ["response-guitar-1", "response-guitar-2"]
    assert len(rows(made, "responses")) > len(STYLES)
    for drawing in found:
        lines = [shape for shape in drawing.shapes if isinstance(shape, Polyline)]
        assert len({(line.pattern, line.width_mm) for line in lines}) >= min(len(lines), 4)


def test_what_is_over_a_limit_is_told() -> None:
    # 900 pF on the pickup; 10 kohm into 50 kohm is 5 times; 10 kohm with 1200 pF falls from 13.3 kHz.
    guitar = GUITAR.replace("3 m", "9 m")
    marl = block("unit", "marl", "input in ts 1 Mohm", "output out ts 10 kohm", "bypass buffered")
    text = COAX + guitar + COMBO.replace("1 Mohm", "50 kohm") + marl + "chain guitar -> marl -> combo\n"
    first, second = rows(results_of(text + "leads {\n  A1 marl.out -> combo.in of coax made 12 m\n}\n"), "sections")
    assert first["verdict"] == "over 800 pF [FAIL]"
    assert second["verdict"] == "corner under 15 kHz; inputs under 10 times the source [FAIL]"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (COMBO.replace(" 1 Mohm", ""), "the impedance of 'combo.in' is not said"),
        (COMBO.replace("}", "}\n" + unit("marl")), "how 'marl' is bypassed is not said"),
    ],
)
def test_what_is_not_known_is_named(text: str, words: str) -> None:
    chain = "chain guitar -> marl -> combo\n" if "unit marl" in text else "chain guitar -> combo\n"
    made = results_of(COAX + GUITAR + text + chain)
    first = rows(made, "sections")[0]
    assert first["peak"] == " [not known]"
    assert first["verdict"] == " [not known]"
    assert drawings(made) == []
    sheet: Sheet = made.call(loading_table)
    notes = sheet.block("reading")
    assert isinstance(notes, Paragraph)
    assert f"Not known: {words}." in notes.lines


def marked(row: dict[str, str]) -> set[str]:
    return {column for column, text in row.items() if text.endswith(" [assumed]")}


def test_an_assumed_fact_marks_just_what_leans_on_it() -> None:
    """A pickup's inductance is no part of a capacitance, a tone control none of what pickup and cable are alone."""
    rig = COAX + COMBO + "chain guitar -> combo\n"
    made = results_of(rig + GUITAR.replace("4 H", "4 H assumed"))
    assert marked(rows(made, "sections")[0]) == {"unloaded resonance", "peak"}
    assert marked(rows(made, "pickups")[0]) == {"inductance", "unloaded", "Q"}
    made = results_of(rig + GUITAR.replace("22 nF", "22 nF assumed"))
    assert marked(rows(made, "sections")[0]) == {"peak"}
    assert marked(rows(made, "pickups")[0]) == {"across", "Q"}
    made = results_of(rig.replace("100 pF/m", "100 pF/m assumed") + GUITAR)
    assert marked(rows(made, "sections")[0]) == {"per metre", "cable", "total", "unloaded resonance", "peak"}


def test_what_is_stated_is_told_where_an_input_is_not() -> None:
    # 300 + 100 = 400 pF: 1/(2 pi sqrt(4 x 400e-12)) = 3979 Hz; what the amp's impedance is part of is not known.
    text = COAX + GUITAR + block("amp", "combo", "input in ts") + "chain guitar -> combo\n"
    (row,) = rows(results_of(text), "pickups")
    assert list(row.values()) == ["1", "guitar", "4", "8", "100", "300", " [not known]", "3979", " [not known]"]


def test_states_are_told_by_wiring_where_it_differs() -> None:
    """Kitchen and hall have the amp's own loop, quay has not; the pickup meets the same in all three."""
    found = {row["section"]: row["state"] for row in rows(results(ROOT / "examples/tide-line/board.rig"), "sections")}
    assert found["baritone.out → shingle.in"] == "every state but knot alone on, everything on"
    assert found["estuary.outl → ferry.in, cabin.in"] == "kitchen, hall: every state"
    assert found["cabin.send → ebb.in"] == "kitchen, hall: ebb alone on, everything on"


@pytest.mark.parametrize(
    ("hertz", "text"), [(15_157_614, "15200"), (1_000_000, "1000"), (404_200, "404"), (15_158, "15.2"), (9_876, "9.88")]
)
def test_a_corner_has_three_figures(hertz: float, text: str) -> None:
    assert corner_khz(hertz) == text


def test_a_half_goes_up_as_on_paper() -> None:
    """0.09 m at 105 pF/m is 9.45 pF, which binary figures hold as a little less; 6.09 m, 639.45 pF, as a little more."""
    assert [PICOFARADS.text(metres * 105) for metres in (0.09, 6.09)] == ["9.5", "639.5"]
    assert RESPONSE_DECIBELS.text(-0.125) == "−0.13"
    assert PICOFARADS.text(-0.0) == "0"


def test_scenarios_that_are_the_same_in_all_states_are_not_told() -> None:
    """Two instruments, each with a chain for both houses: what differs is the instrument. Curve and table have one name."""
    text = (
        COAX
        + GUITAR
        + block("instrument", "baritone", *OWN, "lead 3 m of coax")
        + block("scenario", "north", "mains 230 V 50 Hz")
        + block("scenario", "south", "mains 230 V 50 Hz")
        + COMBO
        + unit("gate", "bypass buffered")
        + "chain for north, south with guitar: guitar -> gate\nchain for north, south with baritone: baritone -> gate\n"
        + "chain gate -> combo\n"
    )
    made = results_of(text)
    states = {row["section"]: row["state"] for row in rows(made, "sections")}
    assert states["guitar.out → gate.in"] == "with guitar: every state"
