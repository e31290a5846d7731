"""A test that is due -> the cells that tell its limit, what it read last and before, with room to write where it was not read."""

from __future__ import annotations

from rigc.analysis.tests.due_tests import Due
from rigc.analysis.tests.limit import in_decibels, said, with_sign
from rigc.model.records import Reading
from rigc.reports.content import Cell, Column

DATE = Column("date", least_mm=25)
BY = Column("by", least_mm=14)
BEFORE = Column("before, and change", key="before")


def reading_room(head: str, key: str = "") -> Column:
    """A column of readings, wide enough to write one in."""
    return Column(head, key=key, least_mm=22)


def read_cells(due: Due) -> tuple[Cell, ...]:
    """Limit, reading, date, by, the reading before with the change since."""
    last = due.last
    return (
        Cell(due.limit.short),
        reading_cell(due),
        Cell("" if last is None else last.date),
        Cell("" if last is None else last.by),
        Cell(before_words(due)),
    )


def reading_cell(due: Due) -> Cell:
    """What was read, marked where it lies outside its limit."""
    if due.last is None:
        return Cell("")
    return Cell(
        with_sign(due.last.reading.typed), strong=due.passed is False, mark="OUTSIDE" if due.passed is False else ""
    )


def before_words(due: Due) -> str:
    """`9.05 V on 2026-03-01: +70 mV`; empty where there was no reading before."""
    before, last = due.before, due.last
    if before is None or last is None:
        return ""
    return f"{with_sign(before.reading.typed)} on {before.date}{_change(before, last)}"


def _change(before: Reading, last: Reading) -> str:
    was, unit = in_decibels(before.reading.value, before.unit, before.test)
    now, also = in_decibels(last.reading.value, last.unit, last.test)
    if unit != also:
        return ""
    by = now - was
    return ": no change" if abs(by) < 1e-9 else f": {'+' if by > 0 else ''}{said(float(f'{by:.6g}'), unit)}"
