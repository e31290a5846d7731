"""Leads that are made at the bench -> the cut list, batch by stock from long to short, and what it takes of each stock."""

from __future__ import annotations

from rigc.analysis.cables.cut_batches import cut_batches, with_waste_cm
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.diagnostics.figures import metres_cut, metres_with_waste, millimetres
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.reports.cables.cells import cable_cell, plug_cells
from rigc.reports.content import Cell, Column, Row, Table

_COLUMNS = (
    Column("stock"),
    Column("cut", "mm", number=True),
    Column("id"),
    Column("plug A"),
    Column("plug B"),
    Column("strip A: jacket, screen, core", "mm", key="strip_a"),
    Column("strip B: jacket, screen, core", "mm", key="strip_b"),
)


def cut_list(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """One row for each lead to be cut, to be ticked off."""
    rows = tuple(_row(rig, lead, cut) for _, batch in cut_batches(rig, leads, lengths) for lead, cut in batch)
    return Table("cut-list", "Cut list", _COLUMNS, rows, empty="nothing to cut", tick=True)


def cut_totals(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """Metres of each stock, as cut and with the usual waste, rounded up to a centimetre."""
    columns = (
        Column("stock"),
        Column("pieces", number=True),
        Column("cut", "m", number=True),
        Column(f"with {100 * WASTE_SHARE.value:g} % waste", "m", number=True, key="with_waste"),
    )
    rows = []
    for cable, batch in cut_batches(rig, leads, lengths):
        total = sum(cut for _, cut in batch)
        texts = (
            cable or "",
            str(len(batch)),
            metres_cut(total),
            metres_with_waste(with_waste_cm(total)),
        )
        rows.append(Row(tuple(Cell(text) for text in texts)))
    return Table("cut-totals", "Cable to cut from", columns, tuple(rows), empty="nothing to cut")


def _row(rig: Rig, lead: Lead, cut: int) -> Row:
    strips = (Cell(_strip(rig, plug)) for plug in lead.ends)
    return Row((cable_cell(lead), Cell(millimetres(cut)), Cell(lead.mark, strong=True), *plug_cells(lead), *strips))


def _strip(rig: Rig, plug: str | None) -> str:
    sizes = None if plug is None else rig.stock.plugs[plug].strip_back_mm
    return "" if sizes is None else ", ".join(f"{size:g}" for size in sizes)
