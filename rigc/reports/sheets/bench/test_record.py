"""Test record: what is measured on the built board, its limits, what was read, with room to write."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.tests.due_tests import DueTests
from rigc.facts.tests import TESTS
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.control.setting_tables import setting_tables
from rigc.reports.front.cautions import care
from rigc.reports.tests.test_tables import test_tables


def test_record(rig: Rig, power: PowerAssignment, due: DueTests, leads: Leads, settings: SwitchSettings) -> Sheet:
    """Test, point, method, limit, reading, date, who, and the reading before."""
    tables = (*setting_tables(settings), *test_tables(rig, due, leads))
    return Sheet(
        "test-record",
        "Test record",
        "bench and tech",
        (care("test-record", rig, power, name="caution_tests"), _reading(due), *tables, _signed(rig)),
    )


def _reading(due: DueTests) -> Paragraph:
    usual = {each.test for each in due.all if each.test in TESTS}
    sources: dict[str, list[str]] = {}
    for number in sorted(usual):
        sources.setdefault(TESTS[number].source, []).append(str(number))
    common = max(sources, key=lambda source: len(sources[source]))
    told = [f"tests {' and '.join(numbers)}: {source}" for source, numbers in sources.items() if source != common]
    left_out = ", ".join(f"{number} {TESTS[number].name}" for number in TESTS if number not in usual)
    return Paragraph(
        "reading",
        (
            "Make them in this order. Write every reading down, those inside the limit too: fault-finding compares with them "
            'months later. Then enter it, a line each: DATE test 5 at OUTLET reads 9.12 V by "WHO".',
            "Limit: what the source expects there, else the rule of the test. Where none is known, only note the reading.",
            f"Limits are {'; '.join((common, *told))}.",
            *((f"There is nothing on this rig to make these on: {left_out}.",) if left_out else ()),
        ),
        heading="How to read it",
    )


def _signed(rig: Rig) -> Table:
    columns = (
        Column("signed"),
        Column("name", least_mm=40),
        Column("date", least_mm=22),
        Column("meter, its number", key="meter", least_mm=35),
        Column("signature", least_mm=35),
    )
    what = (f"tests of revision {rig.head.letter}", "tests 1 and 2, by a competent person")
    return Table("signed", "Signed", columns, tuple(Row((Cell(each), *(Cell(""),) * 4)) for each in what))


PLACE = 6
SHEET = test_record
