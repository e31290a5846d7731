"""What instruments drive -> their responses in figures: peak, fall, levels, and the difference from the plain stage lead."""

from __future__ import annotations

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section_figures import PickupFigures
from rigc.analysis.signal.loading.source_network import TOLD_HZ
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import told_cell
from rigc.reports.signal.loading.words import state_names, way

_HZ = [f"{hertz:g} Hz" if hertz < 1000 else f"{hertz / 1000:g} kHz" for hertz in TOLD_HZ]
COLUMNS = (
    Column("curve", number=True),
    Column("section"),
    Column("state"),
    Column("peak", "Hz", number=True),
    Column("peak level", "dB", number=True),
    Column("3 dB down", "Hz", number=True, key="fallen"),
    *(Column(f"at {hertz}", "dB", number=True, key=f"at_{hertz.replace(' ', '').lower()}") for hertz in _HZ),
    *(
        Column(f"{hertz} against plain lead", "dB", number=True, key=f"plain_{hertz.replace(' ', '').lower()}")
        for hertz in _HZ
    ),
)


def response_table(loading: Loading, driven: tuple[PickupFigures, ...]) -> Table:
    """One row a section that a passive instrument drives; the numbers are those of the curves."""
    rows = tuple(_row(loading, told, at) for at, told in enumerate(driven, 1))
    return Table(
        "responses",
        "Responses of passive instruments, controls and inputs counted",
        COLUMNS,
        rows,
        empty="",
        landscape=True,
    )


def _row(loading: Loading, told: PickupFigures, number: int) -> Row:
    section = told.figures.section
    names = (Cell(str(number), strong=True), Cell(way(section)), Cell(state_names(loading, (section,))))
    cells = (told.peak, told.peak_level, told.fallen, *told.levels, *told.against_plain)
    return Row((*names, *map(told_cell, cells)))
