"""A traced number with some of its facts replaced; the arithmetic is plain."""

from __future__ import annotations

from rigc.model.fact import Fact, Quantity
from rigc.source import Source, Span
from rigc.traced.figure import figure
from rigc.traced.given import stated
from rigc.traced.means import highest, in_parallel
from rigc.traced.revalued import facts_in, place_of, revalued
from rigc.traced.term import Term, Traced
from rigc.traced.units import IMPEDANCE

SOURCE = Source("x.rig", "0123456789")


def fact(value: float, at: int) -> Quantity:
    return Fact(value, f"{value:g}", Span(SOURCE, at, at + 1))


def test_a_sum_is_reckoned_anew_with_another_fact() -> None:
    # 2 x (3 + 4) = 14; with 5 in place of the 4 it is 16.
    three, four = fact(3, 0), fact(4, 1)
    value = 2 * (stated("three", three) + stated("four", four))
    assert float(value) == 14
    assert revalued(value, {place_of(four.span): 5}) == 16
    assert revalued(value, {}) == 14


def test_a_fact_counts_wherever_it_comes_into_the_number() -> None:
    # 6 || 6 = 3, and the higher of 3 and 2 is 3; with 2 for the 6 it is 1, and 2 is higher.
    six, two = fact(6, 0), fact(2, 1)
    both: Traced = in_parallel(stated("one", six), stated("other", six))
    value = highest(figure("x.both", both, IMPEDANCE, rule="", source=""), stated("two", two))
    assert float(value) == 3
    assert revalued(value, {place_of(six.span): 2}) == 2
    assert [each.fact for each in facts_in(value).values()] == [six, two]


def test_a_number_of_many_steps_needs_no_depth() -> None:
    # 0 + 3000 x 1
    one = fact(1, 0)
    value: Traced = stated("one", one)
    for _ in range(2999):
        value = figure("x.y", value + stated("one", one), IMPEDANCE, rule="", source="")
    assert isinstance(value, Term) and revalued(value, {place_of(one.span): 2}) == 6000
