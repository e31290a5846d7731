"""What a fact may be off by: as stated, in every way of writing it; of a guess by its kind; and what is wrong with a spread."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block, results_of

from rigc.analysis.revision.compared.words import exact
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.fact import Spread, spread_of
from rigc.model.rig import Rig
from rigc.model.units import measures
from rigc.model.units.measures import Measure
from rigc.source import Source


@pytest.mark.parametrize(
    ("line", "field", "value", "least", "most", "typed"),
    [
        # 350 × 10 % = 35: 315 to 385
        ("draws 350 mA +- 10 %", "draws_ma", 350, 315, 385, "350 mA ± 10 %"),
        ("draws 350 mA ± 10 %", "draws_ma", 350, 315, 385, "350 mA ± 10 %"),
        ("draws 350 mA+/-10%", "draws_ma", 350, 315, 385, "350 mA ± 10 %"),
        ("draws 350 mA +- 0.05 A", "draws_ma", 350, 300, 400, "350 mA ± 0.05 A"),
        ("draws 350 +- 35 mA", "draws_ma", 350, 315, 385, "350 mA ± 35 mA"),
        ("draws 350 mA +- 0 mA", "draws_ma", 350, 350, 350, "350 mA ± 0 mA"),
        # the middle of 40 and 60 is 50; of 0.9 A and 1200 mA it is 1050 mA
        ("draws from 40 to 60 mA", "draws_ma", 50, 40, 60, "50 mA (from 40 to 60 mA)"),
        ("draws from 0.9 A to 1200 mA", "draws_ma", 1050, 900, 1200, "1050 mA (from 0.9 A to 1200 mA)"),
        ("draws from 40 mA to 60", "draws_ma", 50, 40, 60, "50 mA (from 40 to 60 mA)"),
        ("latency 3.2 ms +- 0.5 ms", "latency_ms", 3.2, 2.7, 3.7, "3.2 ms ± 0.5 ms"),
        ("mass 350 g +- 20 g", "mass_kg", 0.35, 0.33, 0.37, "350 g ± 20 g"),
        # behind the last of the numbers that share a unit, the spread is theirs too; behind another one it is its own
        ("body 70 x 120 x 55 mm +- 1 mm", "width_mm", 70, 69, 71, "70 mm ± 1 mm"),
        ("body 70 x 120 x 55 mm +- 10 %", "depth_mm", 120, 108, 132, "120 mm ± 10 %"),
        ("body 70 mm +- 2 mm x 120 x 55 mm +- 1 mm", "width_mm", 70, 68, 72, "70 mm ± 2 mm"),
        ("body 70 +- 2 x 120 x 55 mm", "width_mm", 70, 68, 72, "70 mm ± 2 mm"),
        ("body from 69 to 71 x 120 x 55 mm", "width_mm", 70, 69, 71, "70 mm (from 69 to 71 mm)"),
        ("gain 12 dB +- 2 dB", "gain_db", 12, 10, 14, "12 dB ± 2 dB"),
    ],
)
def test_a_spread_is_read(line: str, field: str, value: float, least: float, most: float, typed: str) -> None:
    fact = getattr(rig_with(line).units["ember"], field)
    assert (fact.value, fact.typed, fact.spread.least, fact.spread.most) == (value, typed, least, most)


def test_a_number_without_a_spread_has_none() -> None:
    unit = rig_with("body 70 mm +- 2 mm x 120 x 55 mm", "draws 350 mA").units["ember"]
    assert unit.width_mm is not None and unit.width_mm.spread is not None
    assert [each.spread for each in (unit.depth_mm, unit.height_mm, unit.draws_ma) if each is not None] == [None] * 3


def test_the_jacks_of_a_run_are_off_by_what_its_ends_are_off_by() -> None:
    """50 to 110 mm in three places: 50, 80, 110 mm, each 2 mm either way."""
    jacks = rig_with("input s1..s3 ts rear 50..110 mm +- 2 mm").units["ember"].jacks
    found = [(each.offset_mm.value, each.offset_mm.spread) for each in jacks if each.offset_mm is not None]
    assert found == [(at, Spread(at - 2, at + 2, "± 2 mm")) for at in (50, 80, 110)]


@pytest.mark.parametrize(
    ("line", "field", "least", "most"),
    [
        ("draws 100 mA", "draws_ma", None, None),
        ("draws 100 mA leaflet", "draws_ma", 85, 115),  # a typical one: 15 %
        ("starts 200 mA leaflet", "starts_ma", None, None),
        ("draws 100 mA measured", "draws_ma", None, None),
        ("draws 100 mA assumed", "draws_ma", 70, 130),  # 30 % of 100 is 30
        ("draws 100 mA +- 5 % assumed", "draws_ma", 95, 105),
        ("draws 100 mA +- 5 % measured", "draws_ma", 95, 105),
        ("mass 400 g assumed", "mass_kg", 0.34, 0.46),  # 15 % of 400 is 60
        ("body 70 x 120 x 55 mm assumed", "depth_mm", 115, 125),
        ("gain -3 dB assumed", "gain_db", -5, -1),
    ],
)
def test_a_guess_may_be_off_by_what_its_kind_may(line: str, field: str, least: float | None, most: float) -> None:
    off = spread_of(getattr(rig_with(line).units["ember"], field))
    assert (None if off is None else (off.least, off.most)) == (None if least is None else pytest.approx((least, most)))


def test_a_guess_is_off_by_no_more_than_there_is() -> None:
    """An assumed height of 2 mm lies from 0 to 7 mm: 5 mm either way would be less than nothing."""
    unit = rig_with("input in ts rear 10 mm up 2 mm assumed").units["ember"]
    height = unit.jacks[0].height_mm
    assert height is not None and spread_of(height) == Spread(0.0, 7.0, "± 5 mm")


@pytest.mark.parametrize("name", [name for name, each in vars(measures).items() if isinstance(each, Measure)])
def test_what_a_guess_is_off_by_is_a_share_or_in_the_unit_of_its_kind(name: str) -> None:
    measure: Measure = getattr(measures, name)
    assert measure.guess is None or measure.guess.unit in (
        "%",
        measure.unit,
        *(["dB"] if measure.unit == "dBu" else []),
    )


@pytest.mark.parametrize(
    ("line", "message", "advice"),
    [
        ("draws 350 mA +- 10 mV", "'10 mV' is a voltage; a current goes here", "write a current, for example 10 mA"),
        ("draws 350 mA +- 10", "'+- 10' has no unit: 10 mA or 10 %?", "write +- 10 mA; or write +- 10 %"),
        ("draws 350 mA +- -5 %", "'+- -5 %' is negative; a spread goes both ways", "delete the minus sign"),
        ("draws 350 mA +- 10 percent", "'percent' is written % here", "write %"),
        (
            "draws 350 mA +- 120 %",
            "'350 mA +- 120 %' reaches below nothing; a current can't be negative",
            "write what it may be off by at most, or both ends: from ___ to ___ mA",
        ),
        ("draws from 60 to 40 mA", "'from 60 to 40 mA' runs from the higher to the lower", "write from 40 to 60 mA"),
        (
            "draws from 60 mA to 40 mA",
            "'from 60 mA to 40 mA' runs from the higher to the lower",
            "write from 40 mA to 60 mA",
        ),
        (
            "draws from 40 to 6000 mA",
            "6000 mA is too much for a pedal: at most 5 A is plausible",
            "measure it again",
        ),
        (
            "gain 12 dB +- 10 %",
            "'+- 10 %' means nothing of a gain: it is off by so many dB",
            "write it in dB, for example +- 2 dB",
        ),
        (
            "price 450 EUR +- 10 EUR",
            "'+- 10 EUR' has no meaning here: a sum of money is taken here as it is written",
            "delete '+- 10 EUR'",
        ),
        (
            "accepts 9..18 V +- 5 %",
            "'+- 5 %' has no meaning here: a voltage is taken here as it is written",
            "delete '+- 5 %'",
        ),
        (
            "switch at from 10 to 12 mm, 20 mm",
            "'from 10 to 12 mm' has no meaning here: a length is taken here as it is written",
            "write one number, for example 10 mm",
        ),
    ],
)
def test_a_spread_that_can_not_be_is_told(line: str, message: str, advice: str) -> None:
    found = [(each.message, each.advice) for each in told(line)]
    assert found == [(message, advice)]


def test_a_current_is_off_by_itself_at_most() -> None:
    """350 mA off by 100 % lies from nothing to 700 mA; by a hair more it would be less than nothing."""
    assert told("draws 350 mA +- 100 %") == []
    assert [each.message for each in told("draws 350 mA +- 100.1 %")] == [
        "'350 mA +- 100.1 %' reaches below nothing; a current can't be negative"
    ]


def test_a_spread_is_borne_with_the_fact_by_what_is_like_it() -> None:
    text = (
        block("unit", "ember", "draws 350 mA +- 10 %", "mass 300 g +- 5 g")
        + "unit coal like ember {\n  draws 200 mA\n}\n"
    )
    coal = results_of(text).get(Rig).units["coal"]
    assert coal.draws_ma is not None and coal.draws_ma.spread is None
    assert coal.mass_kg is not None and coal.mass_kg.spread == Spread(0.295, 0.305, "± 5 g")


def test_another_spread_is_another_fact_and_another_sign_is_none() -> None:
    facts = [
        rig_with(f"draws 350 mA {off}").units["ember"].draws_ma
        for off in ("", "+- 10 %", "± 10 %", "+- 35 mA", "+- 5 %")
    ]
    assert [exact(each) for each in facts] == [
        350,
        (350, 315, 385),
        (350, 315, 385),
        (350, 315, 385),
        (350, 332.5, 367.5),
    ]


def rig_with(*lines: str) -> Rig:
    made = results_of(block("unit", "ember", *lines))
    return made.get(Rig)


def told(*lines: str) -> list[Diagnostic]:
    text = HEAD + block("unit", "ember", *lines)
    made = compile_rig(lambda name: Source(name, text), "sample.rig", READER)
    return [each for each in made.findings if each.kind.name in ("wrong-quantity", "malformed-statement")]
