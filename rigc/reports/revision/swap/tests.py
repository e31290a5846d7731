"""A trial -> what to measure after the swap, by the numbers of the tests."""

from __future__ import annotations

from rigc.analysis.revision.rework import Rework
from rigc.analysis.revision.substitute.trial import Trial
from rigc.facts.tests import TESTS
from rigc.reports.content import Cell, Column, Row, Table

COLUMNS = (Column("test", number=True), Column("what"), Column("where, and what it passes with", key="limits"))


def test_table(trial: Trial) -> Table:
    """One row for each test, with its points and their limits."""
    limits: dict[int, list[str]] = {}
    for each in trial.mended.get(Rework).retests:
        limits.setdefault(each.test, []).append(f"{', '.join(each.points)}: {each.expected}")
    rows = tuple(
        Row((Cell(str(test), strong=True), Cell(TESTS[test].name), Cell("; ".join(told))))
        for test, told in limits.items()
    )
    return Table("tests", "Test afterwards", COLUMNS, rows, empty="nothing to test again", tick=True)
