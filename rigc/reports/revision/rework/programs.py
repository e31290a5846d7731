"""Rework -> presets, songs and MIDI channels to enter anew."""

from __future__ import annotations

from rigc.analysis.revision.plan.plan_records import ChannelPlan, ProgramPlan
from rigc.analysis.revision.rework import Rework
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.revision.rework.words import CHANGE, change_cell, first_cell, tidy

_COLUMNS = (Column("to enter", key="what"), Column("take out", key="before"), Column("put in", key="after"), CHANGE)


def programs_table(rework: Rework) -> Table:
    """A row for each; of a preset that sounds otherwise though its settings are the same, what changed in it."""
    rows = (*map(_program, rework.programs), *map(_channel, rework.channels))
    empty = "no preset, song or channel changes"
    return tidy(Table("programs", "Presets, songs, channels", _COLUMNS, rows, empty=empty, tick=True))


def _program(plan: ProgramPlan) -> Row:
    name = f"preset {plan.number}" if plan.number is not None else f"song '{plan.title}'"
    before, after = plan.before or (), plan.after or ()
    out = [line for line in before if line not in after]
    into = [line for line in after if line not in before]
    if plan.after is None:
        out, into = ["all of it"], []
    if plan.about:
        into.append(f"try it: other units in {', '.join(plan.about)}")
    return Row((first_cell(name, plan), Cell("; ".join(out)), Cell("; ".join(into)), change_cell(plan)))


def _channel(plan: ChannelPlan) -> Row:
    before = "" if plan.before is None else f"channel {plan.before}"
    after = "no channel" if plan.after is None else f"channel {plan.after}"
    return Row((first_cell(plan.unit, plan), Cell(before), Cell(after), change_cell(plan)))
