"""Ranges of traced numbers: worked by hand, and against published examples of how uncertainties are carried through a formula."""

from __future__ import annotations

from math import cos, pi, sin

import pytest

from rigc.model.fact import Fact, Quantity, Spread
from rigc.source import Source, Span
from rigc.traced.figure import figure
from rigc.traced.given import choice, stated
from rigc.traced.interval import Interval
from rigc.traced.means import (
    apart,
    becomes,
    decibels,
    found,
    highest,
    in_its_unit,
    in_parallel,
    least,
    percent,
    taken,
    total,
    total_known,
    worked,
)
from rigc.traced.ranged import Range
from rigc.traced.shown import PLAIN, Shown
from rigc.traced.term import Term, Traced
from rigc.traced.units import TENTHS

SOURCE = Source("x.rig", "0123456789")


class Facts:
    """Facts with what each may be off by, either way."""

    def __init__(self) -> None:
        self.off: dict[int, float] = {}

    def __call__(self, value: float, off: float = 0.0, shown: Shown = PLAIN) -> Term:
        return stated(f"f{len(self.off)}", self.fact(value, off), shown)

    def fact(self, value: float, off: float) -> Quantity:
        at = len(self.off)
        self.off[at] = off
        return Fact(value, f"{value:g}", Span(SOURCE, at, at + 1))

    def may_be(self, fact: Quantity) -> Spread | None:
        off = self.off[fact.span.start]
        return Spread(fact.value - off, fact.value + off, f"+- {off:g}") if off else None

    def range(self, value: Traced) -> Range:
        return Range(value, self.may_be)


def cases() -> dict[str, tuple[Facts, Traced, Interval, bool]]:
    """A number by what it shows, with its range by hand and whether that is the range itself."""
    f = Facts()
    a, b, c = f(10, 1), f(4, 2), f(5)
    tenths = f(3, 1, TENTHS)
    wide = f(0, 2)
    weights = (f(1, 0.5), f(1, 0.5))
    return {
        "sum": (f, a + b + c, (9 + 2 + 5, 11 + 6 + 5), True),
        "difference": (f, a - b, (9 - 6, 11 - 2), True),
        "product": (f, a * b, (9 * 2, 11 * 6), True),
        "product of what may be less than nothing": (f, wide * a, (-22, 22), True),
        "quotient": (f, a / b, (9 / 6, 11 / 2), True),
        "a fact less itself": (f, a - a, (0, 0), True),
        "a square falls and rises": (f, a * a - 100, (81 - 100, 121 - 100), True),
        # 10 a - a^2 at 9 is 9, at 11 it is -11: it falls all the way, for 10 - 2 a is below nothing there.
        "a product that falls": (f, 10 * a - a * a, (-11, 9), True),
        # From 2 to 6 it is highest, 9, at 3, which halves of 4 and of 2 come to; the other is highest, 7.29, at 2.7, and there
        # the piece from 2.5 to 2.75 can't be more than 2.75 (5.4 - 2.5).
        "a hill with its top where it is cut": (f, b * (6 - b), (0, 9), True),
        "a hill": (f, b * (5.4 - b), (-3.6, 7.975), False),
        "part of a whole": (f, percent(b, total((b, a))), (2 / 13 * 100, 6 / 15 * 100), True),
        "mean by weight": (f, total((weights[0] * c, weights[1] * a)) / total(weights), (6, 9.5), True),
        "highest": (f, highest(a, b), (9, 11), True),
        "least of those that cross": (f, least(b, c), (2, 5), True),
        # The latest less the earliest, 10 and 4 and 5: 9 less 5 or 11 less 2, as the 5 is no longer the earliest below.
        "spread of three": (f, highest(a, b, c) - least(a, b, c), (9 - 5, 11 - 2), True),
        "side by side": (f, in_parallel(a, b), (18 / 11, 66 / 17), True),
        "level": (f, decibels(a / 10), (-0.915, 0.828), True),
        "step": (f, becomes(a, lambda each: -(-each // 5) * 5), (10, 15), True),
        "in tenths": (f, in_its_unit(figure("x.y", tenths, TENTHS, rule="", source="")), (2, 4), True),
        "known parts": (f, total_known((a, b)), (11, 17), True),
        "apart": (f, apart(b, c), (0, 3), True),
        "taken": (f, taken(a, lambda: "the first", b), (9, 11), True),
        "function that falls": (f, worked("1 / {}", lambda each: 1 / each, b, moves="-"), (1 / 6, 1 / 2), True),
    }


@pytest.mark.parametrize("name", cases())
def test_a_range_is_as_worked_by_hand(name: str) -> None:
    facts, value, bounds, exact = cases()[name]
    made = facts.range(value)
    assert made.bounds == pytest.approx(bounds, abs=5e-4)
    assert made.exact is exact


def test_what_each_fact_makes_of_it_is_told_the_most_first() -> None:
    # 2 (10 +- 1) + (4 +- 3) and one that stands: +- 3 of the 4 and +- 2 of the 10.
    f = Facts()
    made = f.range(2 * f(10, 1) + f(4, 3) + f(1))
    assert [(each.fact.label, each.ends) for each in made.parts] == [("f1", (22, 28)), ("f0", (23, 27))]


def test_no_range_where_a_search_found_the_number() -> None:
    f = Facts()
    assert f.range(found(3, lambda: "by trying", f(2, 1))).bounds is None
    assert f.range(worked("f({})", lambda each: each, f(2, 1))).bounds is None
    assert f.range(1 / f(1, 1)).bounds is None  # it may be divided by nothing


def test_what_stands_has_no_facts() -> None:
    f = Facts()
    made = f.range(f(2) + 3)
    assert (made.facts, made.bounds, made.parts, made.beside) == ((), None, (), ())


def test_what_decided_without_being_a_number_in_it_is_told_beside() -> None:
    f = Facts()
    way = figure("a.way", f(3, 1), PLAIN, choice("which", f.fact(5, 1)), rule="", source="")
    made = f.range(way)
    assert [each.label for each in made.facts] == ["f0"]
    assert [each.label for each in made.beside] == ["which"]


def test_a_long_sum_of_many_facts_is_bounded_soon() -> None:
    # 2000 facts of 1 +- 0.1, each twice: two corners are enough however many there are.
    f = Facts()
    parts = [f(1, 0.1) for _ in range(2000)]
    made = f.range(total(parts) + total(parts))
    assert made.bounds == pytest.approx((3600, 4400))
    assert made.exact


def test_the_end_gauge_of_the_guide() -> None:
    """JCGM 100:2008, Annex H.1, from memory: l = lS + d - lS (da th + aS dth), lS = 50.000 623 mm, d = 215 nm, aS = 11.5e-6/K,
    th = -0.1 K, and nothing for da and dth, which are off by 25 nm, 9.7 nm, 1.2e-6/K, 0.41 K, 0.58e-6/K and 0.029 K. The guide
    has standard deviations that are added by squares, 32 nm; here each is the half of an interval. So what is alike is what
    each contributes by itself (25, 9.7, 0, 0, 2.9, 16.6 nm), and the range is no narrower than their sum, 54 nm."""
    f = Facts()
    length, more, expansion = f(50.000623e6, 25), f(215, 9.7), f(11.5e-6, 1.2e-6)
    warmth, unlike, warmer = f(-0.1, 0.41), f(0, 0.58e-6), f(0, 0.029)
    value = length + more - length * (unlike * warmth + expansion * warmer)
    made = f.range(value)
    parts = {each.fact.label: each.width / 2 for each in made.parts}
    assert parts == pytest.approx({"f0": 25, "f5": 16.6, "f1": 9.7, "f4": 2.9}, rel=0.01)
    assert list(parts) == ["f0", "f5", "f1", "f4"]
    assert made.bounds is not None
    low, high = made.bounds
    assert float(value) - low >= sum(parts.values()) - 0.01 and high - float(value) >= sum(parts.values()) - 0.01
    assert sum(each**2 for each in parts.values()) ** 0.5 == pytest.approx(32, abs=0.5)


def test_resistance_and_reactance_of_the_guide() -> None:
    """JCGM 100:2008, Annex H.2, from memory: V = 4.9990 V, I = 19.661 mA, phi = 1.04446 rad, off by 3.2 mV, 9.5 uA and 0.75 mrad;
    R = V cos phi / I = 127.732, X = V sin phi / I = 219.847, Z = V / I = 254.260 ohm. With their correlations the guide has 0.071,
    0.295 and 0.236 ohm; whatever correlations are, they can't be more than the range's halves, the sums of what each makes:
    V 25.55 x 0.0032 = 0.0818, I 6497 x 9.5e-6 = 0.0617, phi 219.85 x 0.00075 = 0.1649: 0.308 ohm for R, and so on."""
    f = Facts()
    volts, ampere, phi = f(4.9990, 0.0032), f(19.661e-3, 9.5e-6), f(1.04446, 0.00075)
    cosine = worked("cos {}", cos, phi, moves="-")  # from 0 to pi
    sine = worked("sin {}", sin, phi, moves="+")  # from 0 to pi / 2
    assert 0 < phi - 0.00075 < phi + 0.00075 < pi / 2
    for value, ohm, guide, halves in (
        (volts * cosine / ampere, 127.732, 0.071, (0.0818, 0.0617, 0.1649)),
        (volts * sine / ampere, 219.847, 0.295, (0.1407, 0.1062, 0.0958)),
        (volts / ampere, 254.260, 0.236, (0.1628, 0.1229)),
    ):
        made = f.range(value)
        assert float(value) == pytest.approx(ohm, abs=0.001)
        parts = {each.fact.label: each.width / 2 for each in made.parts}
        assert [parts[f"f{at}"] for at in range(len(halves))] == pytest.approx(halves, abs=2e-4)
        assert made.bounds is not None and made.exact
        half = (made.bounds[1] - made.bounds[0]) / 2
        assert half == pytest.approx(sum(halves), rel=0.005)
        assert half >= guide
