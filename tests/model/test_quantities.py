"""Numbers and units against NIST SP 811, and the errors that a unit slip deserves."""

from __future__ import annotations

import subprocess
import sys

import pytest
from cases import ROOT

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.fact import Fact
from rigc.model.units import measures
from rigc.model.units.common_units import COMMON, COMPOUND, SIMPLE
from rigc.model.units.measures import CURRENT, MASS, MASS_PER_LENGTH, OFFSET, VOLTAGE, Measure
from rigc.model.units.measures import LEAD as LENGTH
from rigc.model.units.quantities import factor, factor_of_pint, quantity
from rigc.source import Source, Span
from rigc.syntax.nodes import Amount, Word

# NIST Special Publication 811 (2008), appendix B: 1 in = 2.54 E-02 m (exact), 1 ft = 3.048 E-01 m (exact),
# 1 lb = 4.535924 E-01 kg, 1 oz = 2.834952 E-02 kg, 1 psi = 6.894757 E+03 Pa. The pound is exactly 0.45359237 kg (from memory).
NIST_SP_811 = [
    ("in", "mm", 25.4),
    ("ft", "mm", 304.8),
    ("lb", "kg", 0.4535924),
    ("oz", "kg", 0.02834952),
    ("psi", "kPa", 6.894757),
    ("pF/ft", "pF/m", 1 / 0.3048),
]
PREFIXES = [
    ("kohm", "ohm", 1e3),
    ("Mohm", "ohm", 1e6),
    ("kΩ", "ohm", 1e3),
    ("mA", "mA", 1.0),
    ("A", "mA", 1e3),
    ("µF", "nF", 1e3),
    ("uF", "nF", 1e3),
    ("nF", "pF", 1e3),
    ("g", "kg", 1e-3),
    ("cm", "mm", 10.0),
    ("m", "mm", 1e3),
    ("mAh", "mA*h", 1.0),
    ("Ah", "mA*h", 1e3),
    ("mm2", "mm**2", 1.0),
    ("VA", "W", 1.0),
    ("s", "ms", 1e3),
]


@pytest.mark.parametrize(("unit", "into", "expected"), NIST_SP_811)
def test_conversions_of_nist_sp_811(unit: str, into: str, expected: float) -> None:
    """Each agrees to the seven digits that the table prints."""
    assert factor(unit, into) == pytest.approx(expected, rel=2e-7)


@pytest.mark.parametrize(("unit", "into", "expected"), PREFIXES)
def test_prefixes(unit: str, into: str, expected: float) -> None:
    """SI prefixes, and the spellings that a bench uses."""
    assert factor(unit, into) == expected


def defined() -> tuple[list[str], list[str]]:
    """The prefixes and the units of `units.txt`, each in all its spellings."""
    prefixes: list[str] = [""]
    units: list[str] = []
    for line in (ROOT / "rigc" / "model" / "units" / "units.txt").read_text("utf-8").splitlines():
        if not line.startswith("#"):
            name, _, *others = (part.strip() for part in line.split("="))
            (prefixes if name.endswith("-") else units).extend(each.removesuffix("-") for each in (name, *others))
    return prefixes, units


PREFIX_WORDS, UNIT_WORDS = defined()


def test_the_table_holds_every_unit_with_every_prefix() -> None:
    assert set(SIMPLE) == {f"{prefix}{unit}" for prefix in PREFIX_WORDS for unit in UNIT_WORDS}


@pytest.mark.parametrize("prefix", PREFIX_WORDS)
def test_units_of_the_table_are_what_pint_makes_of_them(prefix: str) -> None:
    """By the registry of `units.txt`, into the unit that its kind hangs on, and into no other kind."""
    for unit in (f"{prefix}{each}" for each in UNIT_WORDS):
        kind, _ = COMMON[unit]
        assert (unit, factor(unit, kind)) == (unit, factor_of_pint(unit, kind))


@pytest.mark.parametrize(
    "unit", [*COMPOUND, "mm", "in", "g", "kg", "oz", "W", "mV", "mA", "kohm", "nF", "H", "ms", "kHz", "psi"]
)
def test_units_of_the_table_convert_as_pint_does(unit: str) -> None:
    """By the registry, into each unit that the model holds and each kind of the table; one of another kind is told as such."""
    model = {each.unit for each in vars(measures).values() if isinstance(each, Measure)}
    for into in sorted(model | {kind for kind, _ in COMMON.values()}):
        typed = unit.replace("**", "")
        assert (into, factor(typed, into)) == (into, factor_of_pint(unit, into))


def test_what_is_advised_needs_no_pint() -> None:
    code = (
        "import sys; from rigc.model.units import measures, quantities\n"
        "model = {each.unit for each in vars(measures).values() if isinstance(each, measures.Measure)}\n"
        "[quantities.factor(unit, into) for unit in quantities.KNOWN for into in model]\n"
        "sys.exit('pint' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code]).returncode == 0


def test_a_length_in_inches() -> None:
    """2.76 in × 25.4 = 70.104 mm; what was typed is kept."""
    found, told = read("2.76", "in", LENGTH)
    assert isinstance(found, Fact)
    assert (found.value, found.typed, told) == (70.104, "2.76 in", [])


def test_a_capacitance_per_foot() -> None:
    """32 pF/ft / 0.3048 = 104.9869 pF/m."""
    found, _ = read("32", "pF/ft", Measure("a capacitance per length", "pF/m", "105 pF/m"))
    assert found is not None
    assert found.value == pytest.approx(104.98687664, rel=1e-9)


@pytest.mark.parametrize(
    ("number", "unit", "measure", "message"),
    [
        ("10", None, LENGTH, "'10' has no unit; a length goes here"),
        ("10", "V", CURRENT, "'10 V' is a voltage; a current goes here"),
        ("22", "mA", VOLTAGE, "'22 mA' is a current; a voltage goes here"),
        ("10", "mmm", LENGTH, "'mmm' is no unit that rigc knows; a length goes here"),
        ("-3", "kg", MASS, "'-3 kg' is negative; a mass can't be"),
        ("22", "A", CURRENT, "22 A is too much for a pedal: did you mean 22 mA?"),
        ("9", "m", OFFSET, "9 m is too much for a place on a board: did you mean 9 mm or 9 cm?"),
        ("35", "g", MASS_PER_LENGTH, "'35 g' is a mass; a mass per length goes here"),
    ],
)
def test_slips_are_told_as_such(number: str, unit: str | None, measure: Measure, message: str) -> None:
    """No unit, a unit of another kind, an unknown unit, a wrong sign and an implausible size are five different errors."""
    found, told = read(number, unit, measure)
    assert found is None
    assert [finding.message for finding in told] == [message]


def read(number: str, unit: str | None, measure: Measure) -> tuple[Fact[float] | None, list[Diagnostic]]:
    """Reads `number unit` as the measure."""
    source = Source("x.rig", f"{number} {unit or ''}".strip())
    end = len(number)
    spot = Span(source, 0, len(source.text))
    word = Word(unit, Span(source, end + 1, len(source.text))) if unit else None
    told: list[Diagnostic] = []
    return quantity(Amount(Word(number, Span(source, 0, end)), word, None, spot), measure, told.append), told
