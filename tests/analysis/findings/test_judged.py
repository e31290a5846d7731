"""How a judged number stands to its limit, with all that its facts may be; worked by hand."""

from __future__ import annotations

import pytest

from rigc.analysis.findings.limits.doubt_words import in_words, owner_and_words
from rigc.analysis.findings.limits.judged import Judged, Standing, standings
from rigc.model.fact import Fact, Quantity, Spread
from rigc.source import Source, Span
from rigc.traced.given import Stated, stated
from rigc.traced.shown import PLAIN
from rigc.traced.term import Term

SOURCE = Source("x.rig", "0123456789")


def fact(at: int, value: float, off: float) -> Quantity:
    spread = Spread(value - off, value + off, f"± {off:g}") if off else None
    return Fact(value, f"{value:g}", Span(SOURCE, at, at + 1), spread=spread)


def term(at: int, value: float, off: float) -> Term:
    return stated("abc"[at], fact(at, value, off))


@pytest.mark.parametrize(
    ("value", "off", "limit", "at_most", "broken", "in_doubt"),
    [
        (70, 9.9, 80, True, False, False),
        (70, 10, 80, True, False, False),  # exactly on its limit it keeps it
        (70, 10.1, 80, True, False, True),
        (80, 1, 80, True, False, True),
        (90, 9.9, 80, True, True, False),
        (90, 10, 80, True, True, True),
        (90, 10, 80, False, False, False),
        (90, 10.1, 80, False, False, True),
        (70, 9.9, 80, False, True, False),
        (70, 10, 80, False, True, True),
        (70, 0, 80, True, False, False),
    ],
)
def test_a_limit_is_in_doubt(
    value: float, off: float, limit: float, at_most: bool, broken: bool, in_doubt: bool
) -> None:
    standing = Standing(Judged("a load", term(0, value, off), limit, at_most, "mA"))
    assert (standing.broken, standing.in_doubt) == (broken, in_doubt)


def test_the_deciding_fact_and_where_it_passes() -> None:
    # 40 +- 20 and 30 +- 5 of 80: the first makes more, passes at 50, and takes 20 of the 10 that are left, the other 5 of them.
    standing = Standing(Judged("the load", term(0, 40, 20) + term(1, 30, 5), 80, True, "mA"))
    assert [each.fact.label for each in standing.parts] == ["a", "b"]
    assert standing.turn == pytest.approx(50)
    assert [standing.taken_by(each) for each in standing.parts] == pytest.approx([2, 0.5])
    assert standing.room == pytest.approx(0.5)
    assert in_words(standing) == "the load is 70 mA, within its limit of 80 mA, and may be 95 mA, over it"


def test_no_fact_passes_alone() -> None:
    # 40 +- 6 and 30 +- 5 of 80: 76 and 75 by themselves, 81 together.
    standing = Standing(Judged("the load", term(0, 40, 6) + term(1, 30, 5), 80, True, "mA"))
    assert standing.in_doubt
    assert standing.turn is None


def test_a_broken_limit_that_may_be_kept() -> None:
    standing = Standing(Judged("the gap", term(0, 12, 5), 15, False, "mm"))
    assert in_words(standing) == "the gap is 12 mm, below its limit of 15 mm, and may be 17 mm, above it"
    assert standing.turn == pytest.approx(15)


def test_the_limit_may_be_what_is_not_sure() -> None:
    standing = Standing(Judged("the voltage", term(0, 9, 0), term(1, 8.7, 0.4), False, "V"))
    assert in_words(standing) == "the voltage is 9 V, above its limit of 8.7 V, which may be 9.1 V"


def test_both_may_be_off() -> None:
    standing = Standing(Judged("the load", term(0, 250, 75), term(1, 325, 65), True, "mA"))
    assert (
        in_words(standing) == "the load is 250 mA, within its limit of 325 mA, and may be 325 mA where that is 260 mA"
    )


def test_of_several_limits_the_last_that_is_in_doubt_is_told() -> None:
    # 88 +- 13 of 80 and of 100: the first is broken in any case but 75 to 80, the last may be broken: that is worse.
    load = term(0, 88, 13)
    (found,) = standings(Judged("the load", load, limit, True, "mA") for limit in (80, 100, 120))
    assert found.judged.limit == 100


def test_what_can_t_be_off_is_not_judged() -> None:
    assert not list(standings([Judged("the load", term(0, 88, 0), 80, True, "mA")]))


@pytest.mark.parametrize(
    ("label", "owner", "words"),
    [
        ("what current marl draws", "marl", "the current that 'marl' draws"),
        ("how high marl.in is", "marl", "how high 'marl.in' is"),
        ("what combo.in takes", "combo", "what 'combo.in' takes"),
        ("the mass of 'marl'", "marl", "the mass of 'marl'"),
        ("gain of marl", "marl", "the gain of 'marl'"),
        ("fen.in (stage)", "fen", "the impedance of 'fen.in'"),
        ("marl mass", "marl", "the mass of 'marl'"),
    ],
)
def test_a_fact_in_words(label: str, owner: str, words: str) -> None:
    assert owner_and_words(Stated(label, fact(0, 1, 0), 1, PLAIN)) == (owner, words)
