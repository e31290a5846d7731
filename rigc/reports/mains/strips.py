"""Mains strips -> the mains sheet's table of what is plugged into each."""

from __future__ import annotations

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.model.rig import Rig
from rigc.model.things import MainsStrip
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.cells import in_metres
from rigc.traced.figure import Figure

_COLUMNS = (
    Column("strip"),
    Column("sockets", number=True),
    Column("own lead", "m", number=True),
    Column("mass", "kg", number=True),
    Column("plugged in"),
    Column("take", "VA", number=True),
    Column("at most", "A", number=True),
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
            _most(rig, strip, loads),
            Cell(
                ", ".join(
                    name for name in rig.behind_strip(strip.name) if name not in loads.all and name not in loads.own.all
                )
            ),
        )
    )


def _most(rig: Rig, strip: MainsStrip, loads: MainsLoads) -> Cell:
    """The highest of its currents, where each scenario's is known."""
    currents = [loads.strip_amperes[name, strip.name] for name in rig.scenarios]
    known = [each for each in currents if isinstance(each, Figure)]
    if not known or len(known) < len(currents):
        return Cell("?")
    return figure_cell(max(known))
