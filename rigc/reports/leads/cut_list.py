"""Leads that are made at the bench -> the cut list, batch by stock from long to short, and which leads it cannot hold."""

from __future__ import annotations

from rigc.analysis.leads.lead_status import made_here
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.stores.reel_uses import ReelUses
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.sheet_codes import see
from rigc.reports.leads.cells import cable_cell, plug_cells
from rigc.traced.figure import Figure

_COLUMNS = (
    Column("stock", folds="of {}"),
    Column("cut", "mm", number=True),
    Column("id"),
    Column("plug A", folds="plug A {}"),
    Column("plug B", folds="plug B {}"),
    Column("strip A", "mm", key="strip_a", folds="strip A: {}"),
    Column("strip B", "mm", key="strip_b", folds="strip B: {}"),
)


def cut_table(rig: Rig, uses: ReelUses) -> Table:
    """One row for each lead to be cut, to be ticked off."""
    rows = tuple(_row(rig, lead, cut) for use in uses.all for lead, cut in zip(use.leads, use.cuts, strict=True))
    return Table(
        "cut-list", "Cut list, batch by stock, long to short", _COLUMNS, rows, empty="nothing to cut", tick=True
    )


def uncut(rig: Rig, leads: Leads, uses: ReelUses) -> Paragraph | None:
    """The leads to be made whose cut length is not known; None if there are none."""
    cut = {lead.mark for use in uses.all for lead in use.leads}
    left_out = [lead.mark for lead in leads.all if made_here(rig, lead) and lead.mark not in cut]
    if not left_out:
        return None
    line = (
        f"Not in this list, for want of a length: {', '.join(left_out)}. The {see('cable-list')} says what is missing."
    )
    return Paragraph("left-out", (line,))


def _row(rig: Rig, lead: Lead, cut: Figure) -> Row:
    strips = (Cell(_strip(rig, plug)) for plug in lead.ends)
    return Row(
        (
            cable_cell(lead),
            figure_cell(cut),
            Cell(lead.mark, strong=True, mark=lead.make.kind),
            *plug_cells(lead),
            *strips,
        )
    )


def _strip(rig: Rig, plug: str | None) -> str:
    sizes = None if plug is None else rig.stock.plugs[plug].strip_back_mm
    return "not stated" if sizes is None else ", ".join(f"{size:g}" for size in sizes)
