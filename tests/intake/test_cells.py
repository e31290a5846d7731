"""Amounts, words, powers and days as people type them: what is read, and what is asked about."""

from __future__ import annotations

import pytest

from rigc.files.intake.cells.amounts import amount, is_blank
from rigc.files.intake.cells.days import day
from rigc.files.intake.cells.power_words import Power, barrel, needs, power, window
from rigc.files.intake.cells.unclear import Unclear
from rigc.files.intake.cells.words import polarity, traits, word
from rigc.files.intake.names import free_name, name_of


@pytest.mark.parametrize(
    ("typed", "kind", "default", "said"),
    [
        ("70 mm", "mm", "", "70 mm"),
        ("70", "mm", "mm", "70 mm"),
        ("2,76 in", "mm", "mm", "2.76 in"),
        ('4 3/4"', "mm", "", "4.75 in"),  # 3/4 = 0.75
        ("4-3/8 inches", "mm", "", "4.375 in"),  # 3/8 = 0.375
        ("4¾″", "mm", "", "4.75 in"),
        ("½ in", "mm", "", "0.5 in"),
        ("1.234,5 g", "g", "", "1234.5 g"),
        ("1,234.5 g", "g", "", "1234.5 g"),
        ("0,350 kg", "g", "", "0.350 kg"),
        ("1 lb 2 oz", "g", "", "18 oz"),  # 16 + 2
        ("2 lbs. 3.5oz", "g", "", "35.5 oz"),  # 32 + 3.5
        ("12 pounds", "g", "", "12 lb"),
        ("500k", "ohm", "", "500 kohm"),
        ("1M", "ohm", "", "1 Mohm"),
        ("1 MΩ", "ohm", "", "1 Mohm"),
        ("10 kOhm", "ohm", "", "10 kohm"),
        (".4 kg", "g", "", "0.4 kg"),
        ("-20 dBu", "dBu", "", "-20 dBu"),
        ("−20", "dBu", "dBu", "-20 dBu"),
        ("80-100 mA", "mA", "", "from 80 to 100 mA"),
        ("80 mA to 0.1 A", "mA", "", None),
        ("100 mA ± 10%", "mA", "", "100 mA +- 10 %"),
        ("0.5 kg +/- 10 g", "g", "", "0.5 kg +- 10 g"),
        ("100 ±5", "mA", "mA", "100 mA +- 5 mA"),
    ],
)  # fmt: skip
def test_amounts(typed: str, kind: str, default: str, said: str | None) -> None:
    if said is None:
        with pytest.raises(Unclear):
            amount(typed, kind, default, False)
    else:
        assert amount(typed, kind, default, False).text == said


@pytest.mark.parametrize(
    "typed", ["ca. 100 mA", "~100mA", "approx. 100 mA", "100 mA (typ.)", "about 100 milliamps", "c. 100 mA"]
)
def test_who_was_not_sure(typed: str) -> None:
    found = amount(typed, "mA", "", False, most=True)
    assert (found.text, found.about) == ("100 mA", True)


@pytest.mark.parametrize(
    "typed", ["100 mA max", "max. 100 mA", "up to 100mA", "< 100 mA", "100 mA (max)", "peak 100 mA"]
)
def test_the_most_counts_only_where_it_is_asked_for(typed: str) -> None:
    found = amount(typed, "mA", "", False, most=True)
    assert (found.text, found.about) == ("100 mA", False)
    with pytest.raises(Unclear, match="the most is no measure"):
        amount(typed, "mA", "", False)


@pytest.mark.parametrize(
    ("typed", "kind"),
    [
        ("1,200 g", "g"), ("1.2.3 g", "g"), ("100", "mA"), ("> 100 mA", "mA"), ("100 mA min", "mA"), ("100/200 mA", "mA"), ("100 W", "mA"),
        ("a lot", "mA"), ("100-80 mA", "mA"), ("1/3 in", "mm"), ("70 x 120", "mm"), ("1 m", "ohm"), ("0 dBV", "dBu"), ("5'6\"", "mm"),
    ],
)  # fmt: skip
def test_what_can_be_read_in_two_ways_is_asked(typed: str, kind: str) -> None:
    with pytest.raises(Unclear):
        amount(typed, kind, "", False)


def test_a_point_with_three_digits_is_a_decimal_unless_the_sheet_has_decimal_commas() -> None:
    assert amount("1.200 kg", "g", "", False).text == "1.200 kg"
    with pytest.raises(Unclear, match="with thousands"):
        amount("1.200 kg", "g", "", True)


@pytest.mark.parametrize("typed", ["", "?", "-", "n/a", "N/A", "tbd", "k.A.", "unknown", "...", "(?)"])
def test_what_says_that_nobody_knows(typed: str) -> None:
    assert is_blank(typed)


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("9V 100mA centre neg", ("9 V dc", "", "100 mA", "centre-negative", "")),
        ("9 V DC, 100 mA max, center positive", ("9 V dc", "", "100 mA", "centre-positive", "")),
        ("12VAC 500 mA", ("12 V ac", "", "500 mA", "", "")),
        ("9-18V dc 5.5x2.1 mm tip negative", ("", "9..18 V", "", "centre-negative", "barrel 5.5 x 2.1 mm")),
        ("ca. 80-100 mA", ("", "", "from 80 to 100 mA", "", "")),
        ("2,1 x 5,5 barrel; 9 volts dc; 0,3 A", ("9 V dc", "", "0.3 A", "", "barrel 5.5 x 2.1 mm")),
        ("neg centre 9V", ("9 V dc", "", "", "centre-negative", "")),
    ],
)  # fmt: skip
def test_power_in_one_cell(typed: str, found: tuple[str, ...]) -> None:
    got = power(typed, True)
    assert (got.needs, got.accepts, got.draws.text if got.draws else "", got.polarity, got.inlet) == found


@pytest.mark.parametrize(
    "typed", ["9V", "9V dc or battery", "9V dc 12V dc", "9V dc 100 mA 200 mA", "via the loop box", "9 V dc 20 mA ⊖"]
)
def test_power_that_is_not_all_understood(typed: str) -> None:
    with pytest.raises(Unclear):
        power(typed, False)


def test_a_passive_unit() -> None:
    assert power("passive", False) == Power(passive=True)


def test_voltages_and_windows() -> None:
    assert needs("9VDC", "", False).needs == "9 V dc"
    assert needs("9", "V", False, "dc").needs == "9 V dc"
    assert window("8,7 - 9,9 V", "", True) == "8.7..9.9 V"
    with pytest.raises(Unclear):
        window("9 V dc", "", False)
    with pytest.raises(Unclear):
        needs("about 9 V dc", "", False)


@pytest.mark.parametrize("typed", ["2.1 mm", "barrel", "big one"])
def test_a_barrel_has_two_diameters(typed: str) -> None:
    with pytest.raises(Unclear):
        barrel(typed, False)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        *((each, "centre-negative") for each in ("centre neg", "Center Negative", "C-", "tip -", "-ve centre", "neg. centre", "centre-negative", "centre: minus")),
        *((each, "centre-positive") for each in ("centre pos", "C+", "tip positive", "+ve center")),
        *((each, "") for each in ("centre", "negative", "both", "-", "centre neg or pos")),
    ],
)  # fmt: skip
def test_polarity(typed: str, said: str) -> None:
    assert polarity(typed) == said


def test_words() -> None:
    jacks = ("ts", "trs", "mini-trs", "din", "xlr")
    assert word('1/4" mono', jacks, "jack") == "ts"
    assert word("True Bypass", ("true", "buffered"), "bypass") == "true"
    assert traits("Digital; high-gain and delay") == ("digital", "high gain", "delay")
    for typed in ('1/4"', "stereo", "jack"):
        with pytest.raises(Unclear):
            word(typed, jacks, "jack")
    with pytest.raises(Unclear, match="'delay' is"):
        traits("delays")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("2026-3-2", "2026-03-02"), ("2.3.2026", "2026-03-02"), ("13/2/2026", "2026-02-13"), ("2/13/2026", "2026-02-13"), ("2 March 2026", "2026-03-02"),
        ("Mar 2nd, 2026", "2026-03-02"), ("3/3/2026", "2026-03-03"), ("3/4/2026", ""), ("March 2026", ""), ("2.3.26", ""), ("30.2.2026", ""), ("46000", ""),
    ],
)  # fmt: skip
def test_days(typed: str, said: str) -> None:
    if said:
        assert day(typed) == said
    else:
        with pytest.raises(Unclear):
            day(typed)


@pytest.mark.parametrize(
    ("typed", "name"),
    [("Café Écho", "cafe-echo"), ("Tern #1", "tern-1"), ("  B&B  ", "b-and-b"), ("808", "unit-808"), ("Größe", "grosse"), ("!!", ""), ("Player's", "players")],
)  # fmt: skip
def test_names(typed: str, name: str) -> None:
    assert name_of(typed) == name


def test_a_name_that_is_taken_gets_a_number() -> None:
    assert free_name("tern", frozenset({"tern", "tern-2"})) == "tern-3"
