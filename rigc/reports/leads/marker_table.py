"""Markers -> the table of what is to be printed: size, both texts, how many."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.leads.labels import NEW_LINE, Labels
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.drawings.markers.marker import Marker, size
from rigc.reports.figure_cell import figure_cell

_COLUMNS = (
    Column("marker size", "mm", key="size"),
    Column("id"),
    ZONE,
    Column("around", "mm", number=True),
    Column("text A: at the first end", key="text_a"),
    Column("text B: at the second end", key="text_b"),
    Column("quantity", number=True, folds="{} of each"),
)


def marker_table(leads: Leads, labels: Labels, found: tuple[Marker, ...], special: SpecialLeads, zones: Zones) -> Table:
    """A row for each lead and adaptor, to be ticked off; `around` is the diameter of a lead's jacket."""
    rows = tuple(_row(leads.of(marker.mark), labels, marker, _zone(marker, leads, special, zones)) for marker in found)
    caption = "Markers: one at each end of a lead or adaptor, and one at the outlet's plug of a Y lead"
    return zoned(Table("markers", caption, _COLUMNS, rows, empty="no leads", tick=True))


def _row(lead: Lead | None, labels: Labels, marker: Marker, zone: str) -> Row:
    texts = [Cell(NEW_LINE.join(text), strong=lead is None or lead.make.flag != "") for text in marker.texts]
    return Row(
        (
            Cell(size(marker)),
            Cell(marker.mark, strong=True),
            Cell(zone),
            figure_cell(labels.around.get(marker.mark), lacking=""),
            *texts,
            *(Cell("") for _ in range(2 - len(texts))),
            figure_cell(marker.quantity),
        )
    )


def _zone(marker: Marker, leads: Leads, special: SpecialLeads, zones: Zones) -> str:
    """From end A to end B; of an adaptor from its outlets to its units."""
    lead = leads.of(marker.mark)
    if lead is not None:
        return zones.ends(lead.start, lead.end)
    adaptors = (each for each in special.all if each.mark == marker.mark)
    return next((zones.feed(each.outlets, each.inlets) for each in adaptors), "")
