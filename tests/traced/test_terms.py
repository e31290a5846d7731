"""Terms and figures: arithmetic that writes its own formula, what it rests on, and what it does where something is not known."""

from __future__ import annotations

from math import inf
from typing import ClassVar

import pytest

from rigc.facts.fact import Fact as OwnFact
from rigc.model.fact import Fact, Provenance, Quantity
from rigc.record import Record
from rigc.source import Source, Span
from rigc.traced.collected import figures
from rigc.traced.figure import Figure, Lacking, Several, assumed, figure, incomplete, known_figure
from rigc.traced.given import at_place, barred, mentioned, ours, stated, unstated
from rigc.traced.means import (
    alike,
    apart,
    becomes,
    chosen,
    decibels,
    found,
    highest,
    in_its_unit,
    in_parallel,
    least,
    percent,
    total,
    total_known,
    worked,
)
from rigc.traced.shown import PLAIN, as_typed, exactly, places
from rigc.traced.term import Traced, Unknown, known, number
from rigc.traced.units import IMPEDANCE, MILLIAMPS, SHARE, TENTHS

SPAN = Span(Source("x.rig", "draws 120 mA\n"), 0, 12)


def fact(value: float, kind: str = "measured") -> Quantity:
    return Fact(value, f"{value:g} mA", SPAN, Provenance(kind, "", "", SPAN))


def draws(name: str, value: float | None, kind: str = "measured") -> Traced:
    return stated(f"{name} draws", None if value is None else fact(value, kind))


def told(value: Traced, shown: object = MILLIAMPS) -> str:
    """The formula of a figure of this value."""
    return figure("x.y", value, shown, rule="", source="").formula()  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("value", "formula"),
    [
        (total([draws("a", 30), draws("b", 120)]), "30 + 120 = 150"),
        (total([]), "0 = 0"),
        (sum([draws("a", 30), draws("b", 120)]), "30 + 120 = 150"),
        ((draws("a", 30) + draws("b", 120)) * 9 / 1000, "(30 + 120) × 9 / 1000 = 1.35"),
        (draws("a", 30) / (draws("b", 100) + draws("c", 50)), "30 / (100 + 50) = 0.2"),
        (draws("a", 30) / (draws("b", 2) * 3), "30 / (2 × 3) = 5"),
        (draws("a", 30) - (draws("b", 10) - draws("c", 4)), "30 − (10 − 4) = 24"),
        (draws("a", 30) - number(-20), "30 − (−20) = 50"),
        (1000 * draws("a", 2), "1000 × 2 = 2000"),
        (number(-20) + (draws("a", 30) + (draws("b", 2) + number(-5))), "−20 + 30 + 2 + (−5) = 7"),
        (highest(draws("a", 3), draws("b", 2)) + number(1), "(the highest of 3, 2) + 1 = 4"),
        (highest(draws("a", 3), draws("b", 2)) - draws("b", 2), "(the highest of 3, 2) − 2 = 1"),
        (100 - draws("a", 2), "100 − 2 = 98"),
        (highest(draws("a", 30), draws("b", 120)), "the highest of 30, 120 = 120"),
        (least(draws("a", 30), draws("b", 120)), "the least of 30, 120 = 30"),
        (least(draws("a", 30)), "30 mA, as stated"),
        (becomes(draws("a", 31) + 2, lambda each: -(-each // 5) * 5), "31 + 2 = 33 → 35"),
        (in_parallel(draws("a", 100), draws("b", 300)), "100 || 300 = 75"),
        (decibels(draws("a", 10) / draws("b", 100)), "20 log10(10 / 100) = −20"),
        (in_parallel(draws("a", 100), draws("b", 300), unit="mA"), "100 || 300 = 75 mA"),
        (worked("√({})", lambda each: each**0.5, draws("a", 16)), "√(16) = 4"),
        (highest(draws("a", 30), draws("b", 120)) + draws("c", 5), "(the highest of 30, 120) + 5 = 125"),
        (apart(draws("a", 30), draws("b", 120)), "|30 − 120| = 90"),
        (chosen(figure("a.takes", draws("a", 30), MILLIAMPS, rule="", source=""), "it is there"), "it is there: 30"),
        (barred("a wall is in the way"), "a wall is in the way"),
        (found(7, lambda: "the seventh of the list"), "the seventh of the list"),
        (at_place("mains", 230, SPAN, "230 V 50 Hz") / 2, "230 / 2 = 115"),
        (at_place("mains", 50, SPAN, "230 V 50 Hz"), "50, of 230 V 50 Hz"),
        (at_place("channel", 3, SPAN), "3, as stated"),
    ],
)
def test_arithmetic_writes_its_formula(value: Traced, formula: str) -> None:
    assert told(value) == formula


def test_an_operand_has_the_digits_from_which_the_result_can_be_had() -> None:
    """7.364 / 120 × 1000 = 61.37 is told 61.4; from 7.36, as that is told itself, a pocket calculator has 61.33, 61.3."""
    takes = figure("mill.takes-va", number(7.364), places("VA", 2), rule="", source="")
    assert (takes.text, told(takes / 120 * 1000, places("mA", 1))) == ("7.36", "7.364 / 120 × 1000 = 61.4")


def test_tenths_are_told_in_millimetres() -> None:
    """35.5 mm and 1.1 mm, counted in tenths: 355 + 11 = 366, and told in mm, also by what is reckoned in mm from them."""
    way = known_figure("A1.way", alike(355) + stated("more", fact(1.1), TENTHS), TENTHS, rule="", source="")
    assert (float(way), way.formula()) == (366, "35.5 + 1.1 = 36.6")
    assert told(in_its_unit(way) * 2, places("mm", 1)) == "36.6 × 2 = 73.2"


def test_a_figure_is_a_number_and_names_its_inputs() -> None:
    """12 of 100 mA are 12 %."""
    load = known_figure("mill.o1.load", total([number(2), draws("a", 10)]), MILLIAMPS, rule="", source="")
    share = figure(
        "mill.o1.percent", percent(load, ours(OwnFact(100, "mA", "rating", "a book"))), SHARE, rule="r", source="s"
    )
    reason = share.reason()
    assert isinstance(share, Figure)
    assert share == pytest.approx(12)
    assert (share.text, reason.formula) == ("12", "12 / 100 × 100 = 12")
    assert [(each.name, each.value, each.why, each.source) for each in reason.inputs] == [
        ("load of mill.o1", "12", "mill.o1.load", ""),
        ("rating", "100", "", "a book"),
    ]
    assert [each.name for each in figures((share,))] == ["mill.o1.percent", "mill.o1.load"]


def test_what_is_not_known_is_carried_on_and_named() -> None:
    load = figure("mill.load", total([draws("a", 30), draws("b", None)]), MILLIAMPS, rule="", source="")
    share = figure(
        "mill.share", percent(load, number(100)), SHARE, mentioned("mill", "an outlet", SPAN), rule="", source=""
    )
    assert isinstance(share, Lacking)
    assert (share.text, share.formula(), known(share)) == ("not known", "for want of b draws", None)
    assert [each.value for each in share.inputs()] == ["not known", "an outlet"]
    assert (
        figure("a.draws", draws("a", None), MILLIAMPS, rule="", source="").formula()
        == "the source does not say a draws"
    )
    with pytest.raises(TypeError):
        load < 3  # type: ignore[operator] # noqa: B015


def test_a_sum_of_what_is_known_says_what_it_left_out() -> None:
    """30 mA and one that nobody has measured: all that rests on the sum says so."""
    load = known_figure("mill.load", total_known([draws("a", 30), draws("b", None)]), MILLIAMPS, rule="", source="")
    share = figure("mill.share", percent(load, number(100)), SHARE, rule="", source="")
    assert load.formula() == "30 = 30, without b draws"
    assert share.formula() == "30 / 100 × 100 = 30, without b draws"
    assert (
        incomplete(load),
        incomplete(share),
        incomplete(known_figure("x.y", number(1), PLAIN, rule="", source="")),
    ) == (
        True,
        True,
        False,
    )
    assert [each.value for each in load.inputs()] == ["30 mA", "not stated"]


def test_assumed_follows_the_derivation() -> None:
    guess, read = draws("a", 30, "assumed"), draws("b", 120, "leaflet")
    load = figure("mill.load", total([guess, read]), MILLIAMPS, rule="", source="")
    beside = figure("mill.way", number(3), PLAIN, load, rule="", source="")
    assert [assumed(each) for each in (load, beside, figure("b.load", read, MILLIAMPS, rule="", source=""))] == [
        True,
        True,
        False,
    ]


def test_several_figures_are_told_as_one() -> None:
    """Two pieces, each 20 mm shorter than 94: it rests on what they rest on, and is not known where one of them is not."""
    count = figure("mill.count", draws("a", 2), PLAIN, rule="", source="")
    long, unknown = (
        figure("mill.long", each - number(20), MILLIAMPS, rule="", source="")
        for each in (draws("b", 94, "assumed"), draws("b", None))
    )
    pieces, no_pieces = (
        Several("mill.pieces", (count, each), written="{} × {}", formulas="{}; {} long", rule="r", source="s")
        for each in (long, unknown)
    )
    reason = pieces.reason()
    assert (reason.value, reason.unit, reason.formula) == ("2 × 74", "mA", "2 mA, as stated; 94 − 20 = 74 long")
    assert [each.value for each in reason.inputs] == ["2 mA", "94 mA"]
    assert [each.name for each in figures((pieces,))] == ["mill.pieces", "mill.count", "mill.long"]
    assert (assumed(pieces), assumed(count)) == (True, False)
    assert (no_pieces.text, no_pieces.formula()) == ("not known", "for want of b draws")


@pytest.mark.parametrize("value", [0.0, -3.0])
def test_a_share_of_nothing_is_not_known(value: float) -> None:
    assert isinstance(percent(number(2), number(value)), Unknown)


def test_an_unknown_equals_one_that_wants_the_same() -> None:
    assert unstated("the mass of a") == unstated("the mass of a") != unstated("the mass of b")


@pytest.mark.parametrize(
    ("shown", "value", "text", "finer"),
    [
        (as_typed("mA"), 0.5, "0.5", "0.5"),
        (places("%", 1), 2.25, "2.3", "2.25"),
        (exactly("W", 3), 0.9, "0.900", "0.900"),
        (exactly("W", 3), 0.9004, "0.900", "0.9004"),
        (places("mm", 1, 10), 6505, "650.5", "650.5"),
        (as_typed("V"), -20, "−20", "−20"),
    ],
)
def test_how_a_figure_is_written(shown: object, value: float, text: str, finer: str) -> None:
    assert (shown.text(value), shown.told(value, 1)[0]) == (text, finer)  # type: ignore[attr-defined]
    assert shown.told(value, 1)[1] == value  # type: ignore[attr-defined]


def test_of_plain_numbers_a_plain_number() -> None:
    # 100 × 300 / 400 = 75; of nothing that loads it is infinite; 20 log10(0.1) = −20.
    assert (in_parallel(100.0, 300.0), in_parallel(), in_parallel(5.0, 0.0)) == (75, inf, 0)
    assert (decibels(0.1), decibels(0.0)) == (-20, -inf)
    assert type(in_parallel(100.0, 300.0)) is type(decibels(0.1)) is float


def test_figures_that_are_made_only_when_asked_for_are_collected() -> None:
    class Told(Record):
        TOLD: ClassVar[tuple[str, ...]] = ("late",)
        given: float

        @property
        def late(self) -> Figure:
            return known_figure("a.late", number(self.given), MILLIAMPS, rule="", source="")

    assert [each.name for each in figures((Told(5.0),))] == ["a.late"]


@pytest.mark.parametrize(
    ("ohm", "text"), [(600, "600 Ω"), (12_000, "12 kΩ"), (1_234_000, "1.23 MΩ"), (inf, "none"), (0, "0 Ω")]
)
def test_an_impedance_is_told_as_people_say_it(ohm: float, text: str) -> None:
    assert IMPEDANCE.text(ohm) == text
    assert IMPEDANCE.told(ohm, 1)[1] == ohm


class MadeWhenAsked(Record):
    """A record whose figure is made each time that it is asked for."""

    TOLD: ClassVar[tuple[str, ...]] = ("load",)

    mark: str

    @property
    def load(self) -> Figure:
        return known_figure(f"{self.mark}.load", number(1), PLAIN, rule="", source="")


def test_a_figure_that_is_made_when_asked_for_hides_no_other() -> None:
    """None is kept by who asks, so that the place of one in memory may be that of the next."""
    marks = [f"A{number}" for number in range(200)]
    assert [each.name for each in figures(tuple(map(MadeWhenAsked, marks)))] == [f"{mark}.load" for mark in marks]
