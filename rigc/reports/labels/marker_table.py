"""Markers -> the table of what is to be printed: size, both texts, how many."""

from __future__ import annotations

from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.labels.marker import Marker, size

_COLUMNS = (
    Column("marker size", "mm", key="size"),
    Column("id"),
    Column("around", "mm", number=True),
    Column("text A: at the first end", key="text_a"),
    Column("text B: at the second end", key="text_b"),
    Column("quantity", number=True),
)


def marker_table(rig: Rig, leads: Leads, labels: Labels, found: tuple[Marker, ...]) -> Table:
    """A row for each lead, to be ticked off; `around` is the diameter of the lead's jacket."""
    rows = (
        Row(
            (
                Cell(size(marker)),
                Cell(lead.mark, strong=True),
                _jacket(rig, lead),
                *(Cell(text) for text in labels.texts[lead.mark]),
                Cell("2"),
            )
        )
        for lead, marker in zip(leads.all, found, strict=True)
    )
    caption = "Markers: two for each lead, one at each end"
    return Table("markers", caption, _COLUMNS, tuple(rows), empty="no leads", tick=True)


def _jacket(rig: Rig, lead: Lead) -> Cell:
    cable = rig.stock.cables.get(lead.cable or "")
    return Cell("" if cable is None or cable.outer_mm is None else f"{cable.outer_mm.value:g}")
