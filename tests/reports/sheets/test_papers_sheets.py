"""Unit schedule, customs, maintenance, spares, missing and assumed facts: what stands in their cells. Rigs are invented."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from small_rigs import block, results_of, unit
from written import written

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.reports.content import NoSheet, Paragraph, Sheet, Table
from rigc.reports.sheets.bench.unit_data_sheets import unit_data_sheets
from rigc.reports.sheets.bench.unit_schedule import unit_schedule
from rigc.reports.sheets.power.mains_sheet import mains_sheet
from rigc.reports.sheets.power.power_table import power_table
from rigc.reports.sheets.record.customs_list import customs_list
from rigc.reports.sheets.record.maintenance import maintenance
from rigc.reports.sheets.record.missing_and_assumed_facts import missing_and_assumed_facts
from rigc.reports.sheets.record.spares_list import spares_list
from rigc.reports.sheets.stage.de_rig_list import de_rig_list
from rigc.reports.sheets.stage.fault_tree import fault_tree

MADE = 'measured 2026-02-14 by "Z.Z."'
GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
CHAIN = "chain guitar -> marl -> combo\n"
HOME_HEAD = "language 1\nrig sample {\n  revision A 2026-03-02\n  class gigging\n}\n"


def made(text: str, sheet: Callable[..., Any], head: str = "") -> Sheet:
    results = results_of(text, head) if head else results_of(text)
    found = results.call(sheet)
    assert isinstance(found, Sheet), found
    return found


def rows(sheet: Sheet, name: str) -> list[tuple[str, ...]]:
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [tuple(f"{cell.text} {cell.mark}".strip() for cell in row.cells) for row in table.rows]


def test_what_the_unit_is_and_where_its_facts_come_from() -> None:
    marl = unit(
        "marl", MADE, 'version "1"', 'fitted version "2"', 'firmware "1.42"', 'serial "S-1"', 'owner "player B"',
        "body 70 x 120 x 55 mm", "mass 400 g leaflet", "feet removed", "base flat",
    )  # fmt: skip
    found = rows(made(GUITAR + COMBO + marl + CHAIN, unit_schedule), "things")
    assert found[2] == (
        "marl", "", "no place", "facts of 1, fitted 2", "1.42", "S-1", "player B", "70 × 120 × 55", "400 g",
        "feet removed, flat",
        'measured 2026-02-14 by Z.Z.; leaflet: mass',
    )  # fmt: skip


def test_sound_and_power_of_a_unit_as_typed() -> None:
    lines = (
        "bypass buffered", "unpowered mutes", "gain 12 dB", "latency 3.2 ms", "digital", "needs 9 V dc",
        "accepts 8.7..9.9 V", "polarity centre-negative", "draws 0.022 A assumed", "starts 60 mA", "ground negative",
        "inlet dc barrel 5.5 x 2.1 mm captive 1.5 m", 'battery "9 V block" 400 mAh', "warm 0.2 W",
    )  # fmt: skip
    sheet = made(GUITAR + COMBO + unit("marl", *lines) + CHAIN, unit_schedule)
    assert rows(sheet, "sound")[1][1:] == (
        "buffered; without power: mutes", "", "", "", "", "12 dB", "3.2 ms", "", "digital, battery 9 V block",
    )  # fmt: skip
    assert rows(sheet, "needs") == [
        (
            "marl", "9 V dc", "8.7 V to 9.9 V", "centre-negative", "negative", "0.022 A assumed", "60 mA",
            "barrel 5.5 × 2.1, captive lead 1.5 m", "9 V block, 400 mAh", "0.2 W",
        )
    ]  # fmt: skip


def test_what_has_a_mains_lead_of_its_own() -> None:
    """An amp and a stage piano, each as its plate says; what is not stated is asked."""
    amp = block("amp", "stack", "earthed", "takes 250 W", "input in ts")
    keys = block("source", "keys", "keyboard", "earthed", "mains 100..240 V 50..60 Hz", "takes 40 VA", "output out ts")
    sheet = made(amp + keys + "chain keys -> stack\n", unit_schedule)
    assert rows(sheet, "own-mains") == [("stack", "?", "250 W"), ("keys", "100..240 V 50..60 Hz", "40 VA")]


def test_unit_data_of_jacks_and_of_the_base() -> None:
    marl = block(
        "unit", "marl", "body 70 x 120 x 55 mm", "input in ts 1 Mohm right 80 mm up 25 mm bonded", "output out ts 1 kohm",
        "impedance in 2 Mohm bypassed", "level in max 6 dBu sensitivity -40 dBu", "switch at 35, 25 mm latching",
        'knob "gain" at 20, 90 mm', "battery-door 30 x 55 mm at 20, 40 mm", "vents rear",
    )  # fmt: skip
    sheet = made(GUITAR + COMBO + marl + CHAIN, unit_schedule)
    data = rows(made(GUITAR + COMBO + marl + CHAIN, unit_data_sheets), "jacks-marl")
    assert data[0] == ("in", "input, ts", "", "right", "80", "25", "bonded", "1 Mohm, bypassed 2 Mohm, max 6 dBu, full at −40 dBu")  # fmt: skip
    assert rows(sheet, "spots") == [
        ("marl", "foot switch, latching", "35", "25", ""),
        ("marl", "knob gain", "20", "90", ""),
        ("marl", "vents rear", "", "", ""),
        ("marl", "battery-door", "20", "40", "30 × 55"),
    ]


def test_customs_list_sums_what_is_stated() -> None:
    text = (
        block("instrument", "guitar", "mass 3.5 kg", 'serial "G-7"', 'owner "player B"', "insured 2400 EUR", "origin PT") + COMBO
        + unit("marl", "insured 640 EUR", "origin PL", "mass 400 g", 'serial "S-1"')
        + unit("lant", "insured 120.50 EUR", "price 90 USD", "mass 350 g")
        + unit("tern")
        + "chain guitar -> marl -> lant -> tern -> combo\n"
    )  # fmt: skip
    # 2400 + 640 + 120.50 = 3160.50 EUR; 3.500 + 0.400 + 0.350 = 4.250 kg, of what does not all say it; 1 + 1 + 1 + 1 + 2 + 2 = 8 pieces.
    assert rows(made(text, customs_list), "things") == [
        ("1", "guitar", "G-7", "player B", "1", "3.500", "2400 EUR", "", "PT", ""),
        ("2", "marl", "S-1", "", "1", "0.400", "640 EUR", "", "PL", ""),
        ("3", "lant", "", "", "1", "0.350", "120.50 EUR", "90 USD", "", ""),
        ("4", "tern", "", "", "1", "", "", "", "", ""),
        ("5", "audio leads on the board", "A2, A3", "", "2", "", "", "", "", ""),
        ("6", "audio leads on the stage", "A1, A4", "", "2", "", "", "", "", ""),
        ("", "sum", "", "", "8", "4.250 at least", "3160.50 EUR at least", "90 USD at least", "", ""),
    ]


def test_decks_cases_mains_strips_and_spares_cross_the_border_too() -> None:
    text = (
        GUITAR + COMBO + unit("marl", "mass 400 g") + unit("marl-2", 'serial "S-2"', "mass 410 g")
        + block("mains-strip", "bar", "mass 500 g", 'owner "hall"')
        + block("deck", "board", "mass 3.9 kg", "price 90 EUR") + block("deck", "other", "mass 7 kg")
        + block("case", "trunk", "mass 9.5 kg", 'serial "C-1"', "insured 300 EUR")
        + CHAIN + "place on board {\n  bar under at 10, 10 mm\n}\n"
        + 'spares {\n  2 audio lead 900 mm in "lid"\n  marl-2 in "trunk"\n}\n'
    )  # fmt: skip
    # 0.4 + 0.5 + 3.9 + 9.5 + 0.41 = 14.71 kg; the deck of which nothing is used stays at home
    assert [row[1:7] for row in rows(made(text, customs_list), "things")] == [
        ("guitar", "", "", "1", "", ""),
        ("marl", "", "", "1", "0.400", ""),
        ("bar", "", "hall", "1", "0.500", ""),
        ("board", "", "", "1", "3.900", ""),
        ("trunk", "C-1", "", "1", "9.500", "300 EUR"),
        ("marl-2", "S-2", "", "1", "0.410", ""),
        ("audio leads on the stage", "A1, A2", "", "2", "", ""),
        ("audio lead, 900 mm", "", "", "2", "", ""),
        ("sum", "", "", "10", "14.710 at least", "300 EUR at least"),
    ]


def test_what_is_somebodys_goes_back_to_him() -> None:
    text = (
        block("instrument", "guitar", 'owner "player B"') + COMBO + unit("marl") + block("case", "trunk", 'owner "hire firm"')
        + CHAIN
    )  # fmt: skip
    found = rows(made(text, de_rig_list), "things")
    assert [(row[0], row[5]) for row in found] == [("guitar", "player B"), ("trunk", "hire firm")]


def test_maintenance_tells_upkeep_batteries_and_strips_that_wear() -> None:
    text = (
        GUITAR + COMBO
        + unit("marl", "draws 10 mA", 'battery "9 V block" 400 mAh only')
        + CHAIN
        + block("strip", "hook", "wide 25 mm", "lasts 1000 cycles")
        + "mounting {\n  all with hook\n}\n"
        + 'tests {\n  every 10 shows "clean the contacts"\n}\n'
    )  # fmt: skip
    # 400 mAh / 10 mA = 40 h, ten shows of 4 h.
    assert rows(made(text, maintenance), "tasks") == [
        ("10 shows", "clean the contacts", "", "", ""),
        ("10 shows", "marl: fit a new battery, 9 V block", "", "", ""),
        ("1000 times opened", "hook: fit new strip", "", "", ""),
    ]


def test_a_fuse_stands_where_it_is_looked_for() -> None:
    """On the mains sheet with its spares, by scenario among the settings, in the totals of its supply, in the upkeep, behind its spare."""
    text = (
        GUITAR + COMBO + unit("marl", "needs 9 V dc", "inlet dc barrel 5.5 x 2.1 mm", "draws 8 mA") + CHAIN
        + block("supply", "mill", "mains 115 V within 10 % 50..60 Hz", "mains 230 V within 10 % 50..60 Hz",
                'fuse T 315 mA 5 x 20 mm at 230 V "H 250 V"', "fuse T 630 mA at 115 V", "outlet o1 9 V dc 100 mA isolated")
        + block("scenario", "hall", "mains 230 V 50 Hz") + block("scenario", "bay", "mains 120 V 60 Hz")
        + "power {\n  marl from mill.o1\n}\n" + 'spares {\n  2 of "fuse T 0.315 A" in "lid"\n}\n'
    )  # fmt: skip
    slow, fast = "T 315 mA, 5 × 20 mm, H 250 V", "T 630 mA"
    mains = made(text, mains_sheet)
    assert rows(mains, "fuses") == [
        ("mill", slow, "230 V", "hall", "2", "lid"), ("mill", fast, "115 V", "bay", "0", ""),
    ]  # fmt: skip
    assert rows(made(text, power_table), "by_supply")[0][-1] == f"{slow} at 230 V; {fast} at 115 V"
    assert [row[:2] for row in rows(made(text, maintenance), "tasks")] == [
        ("when it blows", f"mill: mains plug out, fit a fuse {slow} at 230 V, once"), ("when it blows", f"mill: mains plug out, fit a fuse {fast} at 115 V, once"),
    ]  # fmt: skip
    assert rows(made(text, spares_list), "spares")[0][2] == "mill"
    dark = made(text, fault_tree).block("fuses")
    assert isinstance(dark, Paragraph)
    assert dark.lines[1:] == (f"mill at 230 V: {slow}; spares: 2, lid", f"mill at 115 V: {fast}; spares: 0")
    settings = results_of(text).get(SwitchSettings).all
    assert [(each.at, each.position, each.scenarios) for each in settings if each.switch == "fuse"] == [
        ("mill", slow, ("hall",)), ("mill", fast, ("bay",)),
    ]  # fmt: skip


def test_a_battery_that_an_outlet_spares_is_not_changed_every_few_shows() -> None:
    text = (
        GUITAR + COMBO
        + unit("marl", "draws 10 mA", "needs 9 V dc", "inlet dc barrel 5.5 x 2.1 mm", 'battery "9 V block" 400 mAh')
        + CHAIN + block("supply", "mill", "outlet o1 9 V dc 100 mA isolated") + "power {\n  marl from mill.o1\n}\n"
    )  # fmt: skip
    assert rows(made(text, maintenance), "tasks")[0][:2] == (
        "10 shows on battery alone", "marl: fit a new battery, 9 V block",
    )  # fmt: skip


def test_spares_with_their_bags_what_they_fit_and_how_many_there_must_be() -> None:
    text = (
        block("plug", "flat", "fits ts")
        + GUITAR + COMBO + unit("marl", 'battery "9 V block" 400 mAh only') + unit("lant")
        + "chain guitar -> marl -> lant -> combo\n"
        + 'leads {\n  A2 marl.out -> lant.in flat to flat made 300 mm\n}\n'
        + 'spares {\n  1 audio lead 900 mm in "lid"\n  4 plug flat in "tin"\n  1 of "fuse T 630 mA"\n  2 of "9 V block"\n}\n'
    )  # fmt: skip
    sheet = made(text, spares_list, HOME_HEAD)
    assert rows(sheet, "spares") == [
        ("audio lead", "900 mm", "A2", "", "1", "lid", ""),
        ("plug flat", "", "A2, A3, A4", "", "4", "tin", ""),
        ("fuse T 630 mA", "", "", "", "1", "", ""),
        ("9 V block", "", "marl", "", "2", "", ""),
    ]
    assert rows(sheet, "least") == [("audio", "1", "300", "A2", "1")]


def test_a_straight_spare_is_not_named_for_leads_that_are_turned_too_long_or_legs_of_a_y() -> None:
    fed = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 10 mA")
    text = (
        GUITAR + COMBO
        + unit("marl", *fed) + unit("lant", *fed) + unit("tern", *fed) + unit("fen", *fed) + unit("crib", *fed)
        + "chain guitar -> marl -> lant -> tern -> fen -> crib -> combo\n"
        + block("supply", "mill", "outlet o1..o4 9 V dc 100 mA isolated")
        + "power {\n  marl, lant from mill.o1 shared\n  tern from mill.o2 reversed\n  fen from mill.o3\n  crib from mill.o4\n}\n"
        + "leads {\n  D1a mill.o1 -> marl.dc made 300 mm\n  D1b mill.o1 -> lant.dc made 300 mm\n"
        + "  D2 mill.o2 -> tern.dc made 900 mm\n  D3 mill.o3 -> fen.dc made 500 mm\n  D4 mill.o4 -> crib.dc made 800 mm\n}\n"
        + 'spares {\n  1 dc lead 700 mm in "lid"\n}\n'
    )  # fmt: skip
    sheet = made(text, spares_list, HOME_HEAD)
    assert rows(sheet, "spares") == [
        ("dc lead", "700 mm", "D3", "D1a (leg of Y D1), D1b (leg of Y D1), D2 (REVERSED), D4 (longer)", "1", "lid", ""),
    ]
    # the longest straight lead is D4, not the reversing D2; 700 mm is too short for it
    assert rows(sheet, "least")[-1] == ("dc", "1", "800", "D4", "0 TOO FEW")


def test_missing_and_assumed_facts_have_room_for_who_measures_them() -> None:
    marl = unit("marl", "draws 22 mA assumed", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc")
    sheet = made(GUITAR + COMBO + marl + CHAIN, missing_and_assumed_facts)
    thing, fact, value, off, leans, stated, *blank = rows(sheet, "assumed")[0]
    assert (thing, fact, value, off, stated, blank) == ("marl", "draws", "22 mA", "± 30 %", "assumed", ["", ""])
    assert "power table" in leans
    assert ("marl", "unpowered-unit") not in [(row[0], row[3]) for row in rows(sheet, "missing")]
    assert [row[-2:] for row in rows(sheet, "missing")] == [("", "")] * len(rows(sheet, "missing"))
    assert any("its body" in row[1] for row in rows(sheet, "missing"))


def test_a_size_bears_its_spread_in_the_unit_of_its_column() -> None:
    """2 in is 50.8 mm, off by 0.1 in, 2.54 mm; a range of places is its middle, off by half of it."""
    lines = (
        "body 70 x 120 x 55 mm +- 1 mm",
        "inlet dc barrel 5.5 x 2.1 mm rear 2 in +- 0.1 in up from 20 to 24 mm",
        "draws 350 mA +- 10 %",
        "gain -3 dB +- 1 dB",
    )
    text = GUITAR + COMBO + unit("marl", *lines) + CHAIN
    said = repr(made(text, unit_schedule))
    assert "70 ± 1 × 120 ± 1 × 55 ± 1" in said
    assert ("50.8 ± 2.5", "22 ± 2") in [row[4:6] for row in rows(made(text, unit_data_sheets), "jacks-marl")]
    assert "350 mA ± 10 %" in said
    assert "−3 dB ± 1 dB" in said


def test_what_a_guess_may_be_off_by_is_what_its_kind_is_until_it_is_stated() -> None:
    marl = unit(
        "marl",
        "draws 22 mA +- 2 mA assumed",
        "latency from 2 to 4 ms assumed",
        "mass 300 g +- 5 g measured",
        "feet stay assumed",
    )
    sheet = made(GUITAR + COMBO + marl + CHAIN, missing_and_assumed_facts)
    assert [row[1:4] for row in rows(sheet, "assumed")] == [
        ("feet", "stay", ""),
        ("draws", "22 mA ± 2 mA", "± 2 mA, stated"),
        ("latency", "3 ms (from 2 to 4 ms)", "from 2 to 4 ms, stated"),
    ]


def test_sheets_that_have_nothing_to_say_are_left_out() -> None:
    results = written(GUITAR + COMBO + unit("marl") + CHAIN)
    for sheet in (customs_list, maintenance, spares_list):
        assert isinstance(results.call(sheet), NoSheet)
