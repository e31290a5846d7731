"""Findings of two revisions: which are the same, which go together, which come and go."""

from __future__ import annotations

from rigc.analysis.revision.compared.findings import finding_changes
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.source import Source, Span

KIND = Kind("unfit-label", Level.WARNING, "Doc.", "a limit", "common practice, no source")
OTHER = Kind("too-hot", Level.WARNING, "Doc.", "a limit", "common practice, no source")
SPAN = Span(Source("board.rig", "rig"), 0, 3)


def told(message: str, *subject: str, kind: Kind = KIND) -> Diagnostic:
    return kind.at(SPAN, message, subject=subject, label="here")


def test_what_lists_more_now_says_so_and_does_not_come_and_go() -> None:
    """Of five names four are shared: 4/5 are more than half."""
    before, now = told("A1 to A4", "A1", "A2", "A3", "A4"), told("A1 to A5", "A1", "A2", "A3", "A4", "A5")
    found = finding_changes((before,), (now,))
    assert (found.came, found.went, found.regrouped) == ((), (), ((before, now),))


def test_the_same_words_about_one_thing_less_are_no_change() -> None:
    before, now = told("some float", "hum", "lant", "marl"), told("some float", "hum", "lant")
    found = finding_changes((before,), (now,))
    assert (found.came, found.went, found.regrouped, found.changed) == ((), (), (), ())


def test_those_that_share_less_than_half_come_and_go_unless_they_begin_alike() -> None:
    """One name of three shared is less than half; exactly half, two of four, goes together; so does one of three that is the first."""
    one, other = told("1", "hum", "A1"), told("2", "lant", "A1")
    found = finding_changes((one,), (other,))
    assert (found.came, found.went) == ((other,), (one,))
    half = told("1", "hum", "A1", "A2"), told("2", "lant", "A1", "A2")
    assert finding_changes((half[0],), (half[1],)).regrouped == (half,)
    first = told("1", "hum", "A1"), told("2", "hum", "A2")
    assert finding_changes((first[0],), (first[1],)).regrouped == (first,)


def test_the_likest_go_together_and_rules_apart() -> None:
    before = (told("1", "hum", "A1", "A2"), told("2", "hum", "A2", "A3"))
    now = (told("3", "hum", "A2", "A3", "A4"), told("4", "hum", "A1", "A2", "A5"), told("5", "hum", "A9", kind=OTHER))
    found = finding_changes(before, now)
    assert found.regrouped == ((before[0], now[1]), (before[1], now[0])) or found.regrouped == (
        (before[1], now[0]),
        (before[0], now[1]),
    )
    assert found.came == (now[2],)
