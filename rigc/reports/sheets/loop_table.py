"""Loop table: what each loop holds, its two leads, which presets use it."""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import Sheet
from rigc.reports.wiring import loop_table as loops


def loop_table(rig: Rig, leads: Leads) -> Sheet:
    """H06: the loop table of the wiring sheet, on a page of its own for who programs the switcher."""
    return Sheet("loop-table", "Loop table", "the programmer, the tech", (loops.loop_table(rig, leads),))


SHEET = loop_table
