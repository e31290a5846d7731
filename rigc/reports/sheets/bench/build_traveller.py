"""Build traveller: it goes with the board from step to step of the bench, with hold points at which nobody goes on unsigned."""

from __future__ import annotations

from rigc.analysis.tests.build_work import BuildStep, BuildWork
from rigc.facts.fastening import WAIT_H
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.sheet_codes import in_runs, see

NAME, TITLE = "build-traveller", "Build traveller"

_COLUMNS = (
    Column("step", number=True),
    Column("do", least_mm=52),
    Column("what"),
    Column("times", number=True),
    Column("takes", "min", number=True),
    Column("hold point", key="hold", least_mm=44),
    Column("reading", least_mm=24),
    Column("initials", least_mm=18),
)
_DO = {
    "drill": f"drill the deck ({see('deck-drawing')})",
    "drill for it": f"drill for bolts, screws and brackets, marked from the thing itself ({see('deck-drawing')})",
    "set jack": f"set the panel's jacks ({see('deck-drawing')})",
    "print": f"print labels ({see('label-sheet')})",
    "make": f"make leads ({see('cut-list')})",
    "tests-leads": f"measure the leads ({see('test-record')})",
    "strip base": f"strip on the bases ({see('mounting-strips')})",
    "strip deck": f"strip on the deck ({see('mounting-strips')})",
    "mount": f"set the things down ({see('deck-drawing')})",
    "fit": f"lay and tie leads ({see('cable-list')})",
    "set volts": "set outlets and tape their switches",
    "set lift": "set ground lifts and tape their switches",
    "set selector": "set mains selectors and tape them",
    "tests-mains": f"earth bond and insulation ({see('test-record')})",
    "tests-plugs": f"voltage, polarity, isolation ({see('test-record')})",
    "plug in": f"plug in ({see('wiring-sheet')})",
    "tests-whole": f"all other tests ({see('test-record')})",
}
_HOLD = {
    "drill": "sizes and places measured, edges free of burrs",
    "tests-leads": "no lead is laid that did not pass",
    "strip deck": f"{WAIT_H.value:g} h before it bears its full load",
    "tests-mains": "by a competent person; until then the mains lead stays out",
    "tests-plugs": "no plug goes into a unit before it was read",
    "tests-whole": "signed before it leaves the bench",
}
_READING = Paragraph(
    "reading",
    (
        "A hold point is signed before the next step begins. Minutes are of one hand that knows such boards (common practice, no "
        "source); waiting is not counted.",
    ),
    heading="How to use it",
)


def build_traveller(work: BuildWork) -> Sheet | NoSheet:
    """Step, what, how often, minutes, hold point, room to write."""
    if not work.steps:
        return NoSheet(NAME, TITLE, "No lead, no place and no test is stated that there were work in.")
    rows = [_row(number, step) for number, step in enumerate(work.steps, 1)]
    whole = figure_cell(work.minutes, strong=True)
    rows.append(Row((Cell(""), Cell("in all", strong=True), Cell(""), Cell(""), whole, *(Cell(""),) * 3), total=True))
    table = Table("steps", "Steps, in this order", _COLUMNS, tuple(rows), tick=True)
    return Sheet(NAME, TITLE, "the bench", (table, _READING), landscape=True)


def _row(number: int, step: BuildStep) -> Row:
    return Row(
        (
            Cell(str(number), strong=True),
            Cell(_DO[step.action]),
            Cell(in_runs(step.what)),
            Cell(str(step.times)),
            figure_cell(step.minutes),
            Cell(_HOLD.get(step.action, ""), strong=True),
            *(Cell(""),) * 2,
        )
    )


PLACE = 1
SHEET = build_traveller
