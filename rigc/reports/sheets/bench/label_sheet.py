"""Label sheet: the markers of all leads, as a table and at 1:1 to print and cut."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.drawings.markers.marker import markers
from rigc.reports.drawings.markers.marker_drawings import marker_drawings
from rigc.reports.front.sheet_codes import see
from rigc.reports.leads.marker_table import marker_table

_READING = Paragraph(
    "reading",
    (
        f"Text A stands at the end that the {see('cable-list')} calls from, text B at the other. The text is read from the plug's end.",
        "Slide a marker on before the plug is soldered, or wrap a self-laminating label around the jacket.",
        "The number stands 5 mm high in its own cell, the rest 2.5 mm. `centre −`: the middle of the d.c. plug is negative.",
        "A number once given is never used again and never changed: gaps are normal.",
    ),
    heading="How to use it",
)


def label_sheet(rig: Rig, leads: Leads, labels: Labels, special: SpecialLeads, zones: Zones) -> Sheet:
    """Marker size, both texts and quantity by lead; then every marker at 1:1 with cut marks."""
    found = markers(leads, labels, special)
    table = marker_table(leads, labels, found, special, zones)
    return Sheet("label-sheet", "Label sheet", "the bench", (_reading(rig), table, *marker_drawings(found)))


def _reading(rig: Rig) -> Paragraph:
    most = rig.head.marker_characters
    return _READING if most is None else _READING.replace(lines=(*_READING.lines, f"A marker holds {most} characters."))


PLACE = 4
SHEET = label_sheet
