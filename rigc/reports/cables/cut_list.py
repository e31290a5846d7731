"""Leads that are made at the bench -> the cut list, batch by stock from long to short, and what it takes of each stock."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.reports.cables.cells import cable_cell, millimetres, plug_cells, status
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
    rows = tuple(_row(rig, lead, cut) for _, batch in _batches(rig, leads, lengths) for lead, cut in batch)
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
    for cable, batch in _batches(rig, leads, lengths):
        total = sum(cut for _, cut in batch)
        waste = round(100 * WASTE_SHARE.value)
        centimetres = -(-total * (100 + waste) // 10_000)
        texts = (
            cable or "",
            str(len(batch)),
            f"{total / 10_000:.4f}".rstrip("0").rstrip("."),
            f"{centimetres / 100:.2f}",
        )
        rows.append(Row(tuple(Cell(text) for text in texts)))
    return Table("cut-totals", "Cable to cut from", columns, tuple(rows), empty="nothing to cut")


def _batches(rig: Rig, leads: Leads, lengths: CableLengths) -> list[tuple[str | None, list[tuple[Lead, int]]]]:
    """The leads to be cut and their cut lengths, by cable in the order of the stock, longest first."""
    batches: dict[str | None, list[tuple[Lead, int]]] = {cable: [] for cable in (*rig.stock.cables, None)}
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if length is not None and length.cut is not None and status(rig, lead) == "make":
            batches[lead.cable].append((lead, length.cut))
    return [(cable, sorted(batch, key=lambda each: -each[1])) for cable, batch in batches.items() if batch]


def _row(rig: Rig, lead: Lead, cut: int) -> Row:
    strips = (Cell(_strip(rig, plug)) for plug in lead.ends)
    return Row((cable_cell(lead), Cell(millimetres(cut)), Cell(lead.mark, strong=True), *plug_cells(lead), *strips))


def _strip(rig: Rig, plug: str | None) -> str:
    sizes = None if plug is None else rig.stock.plugs[plug].strip_back_mm
    return "" if sizes is None else ", ".join(f"{size:g}" for size in sizes)
