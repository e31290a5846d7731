"""Tests that are due -> the tables of the test record, one a test, each saying how the test is made."""

from __future__ import annotations

from rigc.analysis.leads.conductors_of_lead import audio_conductors
from rigc.analysis.leads.leads import Leads
from rigc.analysis.tests.due_tests import Due, DueTests
from rigc.facts.tests import TESTS
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.tests.reading_cells import BEFORE, BY, DATE, before_words, read_cells, reading_cell, reading_room

_COLUMNS = (
    Column("point", least_mm=24),
    Column("what is there", key="beside"),
    Column("limit"),
    reading_room("reading"),
    DATE,
    BY,
    BEFORE,
)
_LEAD_COLUMNS = (
    Column("lead"),
    Column("from"),
    Column("to"),
    Column("contacts", folds="{}"),
    Column("3: limit", "Ω", key="limit_3", least_mm=16),
    reading_room("3: contact to contact", "reading_3"),
    reading_room("4: one to another", "reading_4"),
    DATE,
    BY,
    BEFORE,
)


def test_tables(rig: Rig, due: DueTests, leads: Leads) -> tuple[Table, ...]:
    """A table for each test that applies to the rig, the two of leads in one."""
    by_test: dict[int, list[Due]] = {}
    for each in due.all:
        by_test.setdefault(3 if each.test == 4 else each.test, []).append(each)
    return tuple(
        _lead_table(rig, mine, leads)
        if number == 3
        else Table(f"test-{number}", _caption(number), _COLUMNS, _rows(mine), tick=True)
        for number, mine in by_test.items()
    )


def _caption(number: int) -> str:
    test = TESTS.get(number)
    return f"{number}  of this rig" if test is None else f"{number}  {_capital(test.name)}: {test.how}"


def _capital(words: str) -> str:
    return words[0].upper() + words[1:]


def _rows(mine: list[Due]) -> tuple[Row, ...]:
    return tuple(Row((Cell(each.point, strong=True), Cell(each.beside), *read_cells(each))) for each in mine)


def _lead_table(rig: Rig, mine: list[Due], leads: Leads) -> Table:
    """One row a lead for both tests."""
    by_point: dict[str, dict[int, Due]] = {}
    for each in mine:
        by_point.setdefault(each.point, {})[each.test] = each
    ends = {lead.mark: (str(lead.start), str(lead.end), audio_conductors(rig, lead)) for lead in leads.all}
    rows = tuple(_lead_row(point, ends.get(point, ("", "", "")), tests) for point, tests in by_point.items())
    caption = f"3, 4  Audio leads, both ends free. 3: {TESTS[3].how}. 4: {TESTS[4].how}, {TESTS[4].limit}"
    return Table("test-3-4", caption, _LEAD_COLUMNS, rows, tick=True)


def _lead_row(point: str, ends: tuple[str, str, str], tests: dict[int, Due]) -> Row:
    through, across = tests.get(3), tests.get(4)
    readings = [each.last for each in tests.values() if each.last is not None]
    before = [f"{number}: {words}" for number, each in tests.items() if (words := before_words(each))]
    return Row(
        (
            Cell(point, strong=True),
            *(Cell(end) for end in ends),
            Cell("" if through is None else through.limit.short.replace(" Ω", "")),
            *(Cell("") if each is None else reading_cell(each) for each in (through, across)),
            Cell(", ".join(dict.fromkeys(each.date for each in readings))),
            Cell(", ".join(dict.fromkeys(each.by for each in readings))),
            Cell("; ".join(before)),
        )
    )
