"""Loop table: what each loop holds, its two leads, which presets use it."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import NoSheet, Sheet
from rigc.reports.signal import loop_table as loops


def loop_table(rig: Rig, leads: Leads) -> Sheet | NoSheet:
    """For who programs the switcher."""
    table = loops.loop_table(rig, leads)
    if not table.rows:
        return NoSheet("loop-table", "Loop table", "Nothing on this rig has a loop.")
    return Sheet("loop-table", "Loop table", "the programmer, the tech", (table,))


PLACE = 6
SHEET = loop_table
