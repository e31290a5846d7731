"""Unit data sheets: of each unit and supply its plan with dimensioned jacks; of every thing what each jack is, takes and gives."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import spare_things, used_things
from rigc.model.rig import Rig
from rigc.model.things import ENDS, Supply, Unit
from rigc.reports.content import Block, NoSheet, Paragraph, Sheet
from rigc.reports.drawings.units.unit_plan import has_plan, unit_plan
from rigc.reports.schedule.jacks import WithJacks, has_jacks, jack_table, jacks_together

_FEW = 12
"""More jacks than these stand below the plan, in lines of the whole page."""

NAME, TITLE = "unit-data-sheets", "Unit data sheets"

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
    """A drawing and a table for each unit and supply whose width and depth are stated, and one table for all other things with jacks."""
    if not _is_stated(rig, power):
        return NoSheet(NAME, TITLE, "No jack is stated.")
    things = _things(rig, power)
    plans = {thing.name: unit_plan(thing) for thing in things if isinstance(thing, Unit | Supply) and _is_drawn(thing)}
    blocks: list[Block] = []
    for thing in things:
        plan = plans.get(thing.name)
        if plan is not None:
            jacks = jack_table(thing)
            aside = jacks.name if len(jacks.rows) <= _FEW else ""
            blocks += [plan.replace(beside=aside), jacks]
    rest = jacks_together(thing for thing in things if plans.get(thing.name) is None)
    told = (*blocks, *(() if rest is None else (rest,)), _READING)
    return Sheet(NAME, TITLE, "builder, whoever measures", told)


def _things(rig: Rig, power: PowerAssignment) -> tuple[WithJacks, ...]:
    return (
        *rig.instruments.values(),
        *used_things(rig, power),
        *rig.panels.values(),
        *spare_things(rig, power),
    )


def _is_stated(rig: Rig, power: PowerAssignment) -> bool:
    """Whether anything is drawn or has a jack."""
    return any(has_jacks(thing) or _is_drawn(thing) for thing in _things(rig, power))


def _is_drawn(thing: WithJacks) -> bool:
    return isinstance(thing, Unit | Supply) and thing.kind not in ENDS and has_plan(thing)


PLACE = 8
SHEET = unit_data_sheets
THERE = _is_stated
