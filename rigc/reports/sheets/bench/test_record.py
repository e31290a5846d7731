"""Test record: what is measured on the built board, its limits, what was read, with room to write."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.leads.leads import Leads
from rigc.analysis.tests.due_tests import DueTests
from rigc.facts.tests import TESTS
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.control.setting_tables import setting_tables
from rigc.reports.tests.test_tables import test_tables

_CAUTIONS = Paragraph(
    "caution_tests",
    (
        "Tests 1 and 2 are made by a competent person, before first power and after any change on the mains side, by the "
        "local code; without them the board is not plugged in. rigc designs and approves no mains wiring.",
        "Never disconnect, cut, tape or lift a protective earth, least of all to cure hum: strings and microphone may become "
        "live, which kills. On unknown stages use a residual-current device.",
        "Unplug before a lid is opened: supplies hold charge, valve units more than 300 V, and nothing inside is for the user.",
        "Measure voltage and polarity of every DC plug before it goes into a unit: the wrong one destroys it at once. AC bricks "
        "only on units marked for AC.",
        "Mute amps and desk while leads are moved; test tones at a low level. Mute a microphone line with 48 V before plugging.",
    ),
    kind="caution",
)
_FIGURES = Paragraph(
    "caution_figures",
    (
        "Limits are reckoned from the facts entered; the builder is responsible for the rig as built. Tests of electrical "
        "safety are for whoever is licensed to make them.",
    ),
    kind="caution",
)


def test_record(rig: Rig, due: DueTests, leads: Leads, settings: SwitchSettings) -> Sheet:
    """Test, point, method, limit, reading, date, who, and the reading before."""
    tables = (*setting_tables(settings), *test_tables(rig, due, leads))
    return Sheet(
        "test-record", "Test record", "bench and tech", (_CAUTIONS, _reading(due), *tables, _signed(rig), _FIGURES)
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
