"""The power block -> what is plugged into which mains strip, to be ticked off."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("mains lead of", key="thing"),
    Column("into the strip", key="strip"),
)


def mains_plug_table(rig: Rig) -> Table | None:
    """A row for each plug, in the order of the source; None where no strip takes any."""
    rows = tuple(Row((Cell(name, strong=True), Cell(strip))) for name, strip, _ in rig.power.plugged)
    caption = "Plugged into mains strips, last of all"
    return Table("mains_plugs", caption, _COLUMNS, rows, tick=True) if rows else None
