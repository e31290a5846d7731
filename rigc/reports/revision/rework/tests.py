"""Rework -> the tests to make again with room for their readings, and those that need not be made."""

from __future__ import annotations

from rigc.analysis.revision.rework import Rework
from rigc.facts.tests import TESTS
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.revision.rework.words import CHANGE, tidy

_COLUMNS = (Column("test"), Column("at"), Column("limit"), Column("reading"), CHANGE)


def tests_table(rework: Rework, rig: Rig) -> Table:
    """A row for each test and limit; a unit in a loop is named with its loop. The column for readings is left empty."""
    rows = tuple(
        Row(
            (
                Cell(f"{each.test} {TESTS[each.test].name.partition(',')[0]}"),
                Cell(", ".join(_point(rig, point) for point in each.points)),
                Cell(each.expected),
                Cell("\N{NO-BREAK SPACE}" * 16),
                Cell(", ".join(map(str, each.changes))),
            )
        )
        for each in rework.retests
    )
    return tidy(Table("tests", "Test again", _COLUMNS, rows, empty="nothing", tick=True), 4)


def not_needed(rework: Rework) -> Paragraph:
    """What need not be tested, and why."""
    return Paragraph(
        "not-needed", rework.spared or ("Everything is tested again.",), heading="Need not be tested again"
    )


def _point(rig: Rig, point: str) -> str:
    loop = next((use for use in rig.loops if any(stop.thing == point for stop in use.stops)), None)
    if point == rig.head.name:
        return "the board"
    return point if loop is None else f"{point} (loop {loop.number})"
