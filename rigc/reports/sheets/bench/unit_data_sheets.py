"""Unit data sheets: of each unit and supply its plan with dimensioned jacks, and what each jack is."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.model.rig import Rig
from rigc.model.things import Supply, Unit
from rigc.reports.content import Block, NoSheet, Paragraph, Sheet, Table
from rigc.reports.drawings.units.unit_plan import unit_plan
from rigc.reports.schedule.jacks import jack_table

NAME, TITLE = "unit-data-sheets", "Unit data sheets"

_HEADS = ("jack", "kind", "carries", "side", "along it", "height", "bushing")
_READING = Paragraph(
    "reading",
    (
        "Hold the unit beside its plan before anything is drilled or cut: another version has its jacks elsewhere. A jack on the left "
        "or right lies so far from the front edge, one at the front or rear so far from the left edge; heights count from the base "
        "without feet. Dots are foot switches, rings are knobs.",
    ),
    heading="How to read it",
)


def unit_data_sheets(rig: Rig, power: PowerAssignment) -> Sheet | NoSheet:
    """A drawing and a table for each unit and supply whose width and depth are stated."""
    things: tuple[Unit | Supply, ...] = (
        *(unit for unit in used_units(rig) if not unit.ends),
        *used_supplies(rig, power),
    )
    blocks: list[Block] = [block for thing in things for block in _blocks(thing)]
    if not blocks:
        return NoSheet(NAME, TITLE, "Of no unit and no supply both width and depth are stated.")
    return Sheet(NAME, TITLE, "builder, whoever measures", (*blocks, _READING))


def _blocks(thing: Unit | Supply) -> Iterator[Block]:
    plan = unit_plan(thing)
    if plan is not None:
        yield plan.replace(beside=f"jacks-{thing.name}")
        yield _jacks(thing)


def _jacks(thing: Unit | Supply) -> Table:
    """The rows of the unit schedule that are this thing's, without its name."""
    every = jack_table((thing,))
    kept = [at for at, column in enumerate(every.columns) if column.head in _HEADS]
    return Table(
        f"jacks-{thing.name}",
        f"Jacks of {thing.name}",
        tuple(every.columns[at] for at in kept),
        tuple(row.replace(cells=tuple(row.cells[at] for at in kept)) for row in every.rows),
        empty="none is stated",
    )


PLACE = 8
SHEET = unit_data_sheets
