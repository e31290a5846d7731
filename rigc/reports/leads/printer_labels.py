"""Markers -> one row a label, as a label printer takes them: nothing but what is printed, and its size."""

from __future__ import annotations

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.drawings.markers.marker import markers

_SIZE = (Column("width", "mm", number=True), Column("height", "mm", number=True))


def printer_labels(leads: Leads, labels: Labels, special: SpecialLeads) -> Table:
    """Each label once, in the order of the label sheet; a column for each line, empty where a label has fewer."""
    found = [(each, lines) for each in markers(leads, labels, special) for lines in each.texts]
    most = max((len(lines) for _, lines in found), default=1)
    columns = (Column("id"), *(Column(f"line {number}") for number in range(1, most + 1)), *_SIZE)
    rows = []
    for marker, lines in found:
        texts = (marker.mark, *lines, *("",) * (most - len(lines)), f"{marker.width_mm:g}", f"{marker.height_mm:g}")
        rows.append(Row(tuple(Cell(text) for text in texts)))
    return Table("printer", "Labels for a label printer", columns, tuple(rows), empty="no lead bears a label")
