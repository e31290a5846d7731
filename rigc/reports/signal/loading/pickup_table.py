"""What passive instruments drive -> each pickup with what resonates with it, and how sharp its resonance is."""

from __future__ import annotations

from rigc.analysis.signal.loading.section_figures import PickupFigures
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import told_cell

_COLUMNS = (
    Column("curve", number=True),
    Column("instrument"),
    Column("inductance", "H", number=True),
    Column("resistance", "kΩ", number=True),
    Column("its own", "pF", number=True, key="pickup_pf"),
    Column("cable", "pF", number=True, key="cable_pf"),
    Column("controls and inputs", "kΩ", number=True, key="across"),
    Column("unloaded resonance", "Hz", number=True, key="unloaded"),
    Column("Q", number=True),
)


def pickup_table(driven: tuple[PickupFigures, ...]) -> Table | None:
    """A row for each curve; None where no passive instrument is in a chain."""
    rows = tuple(_row(told, number) for number, told in enumerate(driven, 1))
    caption = "Pickups and their resonance; Q with both controls full up"
    return Table("pickups", caption, _COLUMNS, rows) if rows else None


def _row(told: PickupFigures, number: int) -> Row:
    cells = (
        told.inductance,
        told.resistance,
        told.own,
        told.figures.cable,
        told.across,
        told.resonance,
        told.quality,
    )
    return Row((Cell(str(number), strong=True), Cell(told.pickup.instrument), *map(told_cell, cells)))
