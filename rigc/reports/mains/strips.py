"""Mains strips -> the mains sheet's table of what is plugged into each."""

from __future__ import annotations

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.model.rig import Rig
from rigc.model.things import MainsStrip
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.cells import in_metres

_COLUMNS = (
    Column("strip"),
    Column("sockets", number=True),
    Column("own lead", "m", number=True),
    Column("mass", "kg", number=True),
    Column("plugged in"),
    Column("supplies take", "VA", number=True),
    Column("not in this sum"),
)


def strip_table(rig: Rig, loads: MainsLoads) -> Table | None:
    """A row for each strip; None where the rig has none."""
    rows = tuple(_row(rig, strip, loads) for strip in rig.mains_strips.values())
    caption = "Mains strips: bought as they are, checked by a competent person"
    return Table("strips", caption, _COLUMNS, rows, tick=True) if rows else None


def _row(rig: Rig, strip: MainsStrip, loads: MainsLoads) -> Row:
    names = [name for name, into, _ in rig.power.plugged if into == strip.name]
    return Row(
        (
            Cell(strip.name, strong=True),
            Cell("?" if strip.sockets is None else str(strip.sockets)),
            Cell("?" if strip.cord_mm is None else in_metres(strip.cord_mm)),
            Cell("?" if strip.mass_kg is None else f"{strip.mass_kg.value:g}"),
            Cell(", ".join(names) or "nothing"),
            figure_cell(loads.strips[strip.name]),
            Cell(", ".join(name for name in names if name not in loads.all)),
        )
    )
