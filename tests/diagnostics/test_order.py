"""The order in which findings are told."""

from __future__ import annotations

from random import Random

from rigc.diagnostics.diagnostic import Acceptance, Kind, Level
from rigc.diagnostics.order import count, in_order
from rigc.source import Source, Span

A, B = Source("a.rig", "x" * 50), Source("b.rig", "x" * 50)
ONE = Kind("one", Level.ERROR, None, "", "")
TWO = Kind("two", Level.ERROR, None, "", "")
SOFT = Kind("soft", Level.REMARK, None, "", "")


def test_level_then_file_then_place_then_code_and_accepted_last() -> None:
    expected = (
        ONE.at(None, "of the whole rig"),
        TWO.at(Span(A, 3, 4), "m"),
        ONE.at(Span(A, 10, 12), "m"),
        TWO.at(Span(A, 10, 12), "m"),
        ONE.at(Span(B, 0, 1), "m"),
        SOFT.at(Span(A, 0, 1), "m", level=Level.WARNING),
        SOFT.at(Span(A, 0, 1), "m"),
        ONE.cant_check(Span(A, 0, 1), "m"),
        ONE.at(Span(A, 0, 1), "m").replace(accepted=Acceptance("r", "b", "2026-12-31", Span(A, 0, 1))),
    )
    for seed in range(50):
        shuffled = Random(seed).sample(expected, len(expected))
        assert in_order(shuffled) == expected
        assert [str(finding.span) for finding in in_order(shuffled)] == [str(finding.span) for finding in expected]


def test_exact_doubles_go_and_the_same_elsewhere_stays() -> None:
    again = [
        ONE.at(Span(A, 3, 4), "m"),
        ONE.at(Span(A, 3, 4), "m"),
        ONE.at(Span(A, 5, 6), "m"),
        ONE.at(Span(A, 3, 4), "n"),
    ]
    assert [(finding.span.start, finding.message) for finding in in_order(again) if finding.span] == [
        (3, "m"),
        (3, "n"),
        (5, "m"),
    ]


def test_the_count_of_each_level() -> None:
    accepted = SOFT.at(None, "m").replace(accepted=Acceptance("r", "b", "2026-12-31", Span(A, 0, 1)))
    assert count([ONE.at(None, "m"), accepted, SOFT.at(None, "m"), SOFT.at(None, "n")]) == {
        Level.ERROR: 1,
        Level.WARNING: 0,
        Level.REMARK: 2,
        Level.CANT_CHECK: 0,
        None: 1,
    }
