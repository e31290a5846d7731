"""The ranges of every number of the language: just under, on and just over each end; the reference's table; slips of a prefix."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from cases import ROOT

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units import measures
from rigc.model.units.measures import Measure
from rigc.model.units.prefix_slips import in_words
from rigc.model.units.quantities import money, quantity
from rigc.source import Source, Span
from rigc.syntax.nodes import Amount, Word

ALL = {name: value for name, value in vars(measures).items() if isinstance(value, Measure)}
READ = {name: each for name, each in ALL.items() if name != "MONEY"}
UNITS = {"mm**2": "mm2", "mA*h": "mAh", "W*h": "Wh"}


def ends(measure: Measure) -> Iterator[tuple[float, bool]]:
    """A figure a millionth of the range under each end, on it, and over it, with whether it is plausible."""
    hair = (measure.high - measure.low) * 1e-6
    yield from ((measure.low - hair, False), (measure.low, True), (measure.low + hair, True))
    yield from ((measure.high - hair, True), (measure.high, True), (measure.high + hair, False))


@pytest.mark.parametrize("name", READ)
def test_each_range_holds_at_both_ends(name: str) -> None:
    measure = READ[name]
    for value, plausible in ends(measure):
        found, told = read(f"{value:.12f}", UNITS.get(measure.unit, measure.unit), measure)
        assert (found is not None) is plausible, (name, value)
        assert [each.kind for each in told] == ([] if plausible else [WRONG_QUANTITY])


@pytest.mark.parametrize(
    ("number", "plausible"),
    [("0.009", False), ("0.01", True), ("10000000", True), ("10000001", False), ("9" * 5000, False), ("0", False)],
)
def test_a_sum_of_money_has_a_range_too(number: str, plausible: bool) -> None:
    told: list[Diagnostic] = []
    found = money(amount(number, "EUR"), told.append, None)
    assert (found is not None, len(told)) == (plausible, 0 if plausible else 1)
    assert all(len(each.message) < 120 for each in told)


@pytest.mark.parametrize("name", ALL)
def test_each_measure_has_an_example_within_its_range_and_a_reason(name: str) -> None:
    measure = ALL[name]
    assert measure.low < measure.high < float("inf")
    assert measure.bearer != "this" and measure.why
    if name not in ("MONEY", "CEILING_MA"):  # a ceiling's example is the other way to state it
        number, unit = measure.example.split()
        found, _ = read(number, unit, measure)
        assert found is not None


@pytest.mark.parametrize(
    ("number", "unit", "measure", "message"),
    [
        ("8", "A", measures.CURRENT, "8 A is too much for a pedal: did you mean 8 mA?"),
        ("8", "µA", measures.CURRENT, "8 µA is too little for a pedal: did you mean 8 mA?"),
        ("1", "ohm", measures.INPUT_OHM, "1 ohm is too little for an input: did you mean 1 kohm or 1 Mohm?"),
        ("4.2", "mH", measures.INDUCTANCE, "4.2 mH is too little for a pickup's inductance: did you mean 4.2 H?"),
        ("120", "nF", measures.CAPACITANCE, "120 nF is too much for a pickup's capacitance: did you mean 120 pF?"),
        ("500", "ohm", measures.POT_OHM, "500 ohm is too little for a guitar's volume or tone: did you mean 500 kohm?"),
        ("3.2", "s", measures.LATENCY, "3.2 s is too much for a pedal's latency: did you mean 3.2 ms?"),
        ("105", "uF/m", measures.PER_LENGTH, "105 uF/m is too much for a cable's capacitance: did you mean 105 pF/m?"),
        ("800", "%", measures.EFFICIENCY, "800 % is too much for a supply: at most 100 % is plausible"),
        ("70", "cm", measures.WIDTH, "70 cm is too much for a pedal's width: did you mean 70 mm?"),
        ("0", "V", measures.VOLTAGE, "0 V is too little for a pedal or outlet: at least 1 V is plausible"),
        ("0", "pF", measures.LIMIT_PF, "0 pF is too little for a limit of capacitance: at least 10 pF is plausible"),
        ("300", "Mohm", measures.INPUT_OHM, "300 Mohm is too much for an input: did you mean 300 ohm or 300 kohm?"),
    ],
)
def test_a_slip_of_a_prefix_is_named(number: str, unit: str, measure: Measure, message: str) -> None:
    found, told = read(number, unit, measure)
    assert found is None
    assert [each.message for each in told] == [message]
    single = message.count("did you mean") == 1 and " or " not in message.partition("did you mean")[2]
    assert [len(each.mends) for each in told] == [1 if single else 0]


def test_the_reference_tells_each_range_and_its_reason() -> None:
    text = (ROOT / "grammar" / "README.md").read_text("utf-8")
    table = text.partition("### What is plausible")[2].partition("\n### ")[0]
    rows = [tuple(cell.strip() for cell in line.strip("|").split("|")) for line in table.splitlines() if "|" in line]
    assert rows[2:] == [
        (each.bearer, in_words(each.low, unit(each)), in_words(each.high, unit(each)), each.why)
        for each in ALL.values()
    ]


def test_the_reference_tells_what_a_guess_of_each_kind_may_be_off_by() -> None:
    text = (ROOT / "grammar" / "README.md").read_text("utf-8")
    table = text.partition("### What a guess may be off by")[2].partition("\nBeside")[0]
    rows = [tuple(cell.strip() for cell in line.strip("|").split("|")) for line in table.splitlines() if "|" in line]
    typical = measures.CURRENT.leaflet
    assert typical is not None
    assert f"leaflet by {typical.value:g} %" in text.replace("\n", " ")
    assert [name for name, each in ALL.items() if each.leaflet] == ["CURRENT"]
    assert rows[2:] == [
        (each.bearer, f"{each.guess.value:g} {each.guess.unit}", each.guess.source)
        for each in ALL.values()
        if each.guess
    ]


def test_nothing_reads_a_number_by_a_range_of_its_own() -> None:
    """Every `Measure(...)` of the code stands in the one table."""
    made = [path for path in (ROOT / "rigc").rglob("*.py") if re.search(r"\bMeasure\(\s*\"", path.read_text("utf-8"))]
    assert [path.name for path in made] == ["measures.py"]


def unit(measure: Measure) -> str:
    return UNITS.get(measure.unit, measure.unit)


def read(number: str, unit: str, measure: Measure) -> tuple[object, list[Diagnostic]]:
    told: list[Diagnostic] = []
    return quantity(amount(number, unit), measure, told.append), told


def amount(number: str, unit: str) -> Amount:
    source = Source("x.rig", f"{number} {unit}")
    end = len(number)
    return Amount(
        Word(number, Span(source, 0, end)),
        Word(unit, Span(source, end + 1, len(source.text))),
        None,
        Span(source, 0, end),
    )
