"""Markers -> the table of what is to be printed: size, both texts, how many."""

from __future__ import annotations

from rigc.analysis.computations.labels import NEW_LINE
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


def marker_table(rig: Rig, leads: Leads, found: tuple[Marker, ...]) -> Table:
    """A row for each lead and adaptor, to be ticked off; `around` is the diameter of a lead's jacket."""
    rows = tuple(_row(rig, leads.of(marker.mark), marker) for marker in found)
    caption = "Markers: one at each end of a lead or adaptor, and one at the outlet's plug of a Y lead"
    return Table("markers", caption, _COLUMNS, rows, empty="no leads", tick=True)


def _row(rig: Rig, lead: Lead | None, marker: Marker) -> Row:
    texts = [Cell(NEW_LINE.join(text), strong=lead is None or lead.make.flag != "") for text in marker.texts]
    return Row(
        (
            Cell(size(marker)),
            Cell(marker.mark, strong=True),
            _jacket(rig, lead),
            *texts,
            *(Cell("") for _ in range(2 - marker.quantity)),
            Cell(str(marker.quantity)),
        )
    )


def _jacket(rig: Rig, lead: Lead | None) -> Cell:
    cable = None if lead is None else rig.stock.cables.get(lead.cable or "")
    return Cell("" if cable is None or cable.outer_mm is None else f"{cable.outer_mm.value:g}")
