"""Field notes: what was changed on the road, whether the design knows it, and a form for the next change."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import NoSheet, Paragraph, Sheet
from rigc.reports.front.cautions import care
from rigc.reports.revision.note_tables import form_table, note_table
from rigc.reports.revision.swap_tables import swap_table

ON_THE_ROAD = ("touring", "fly")
"""Classes of rigs whose folder always carries the form."""
_READING = Paragraph(
    "reading",
    (
        "Note every change on the day it is made, and send it to the builder: the next revision is designed from this board. Then "
        'it goes into the source: field-note NUMBER DATE "what happened" by "WHO", and in the as-built block: swap FOUND for FITTED field-note NUMBER.',
    ),
    heading="How to use it",
)


def field_notes(rig: Rig, leads: Leads, power: PowerAssignment) -> Sheet | NoSheet:
    """Date, what, found and fitted unit, leads, outlets and presets touched, signed; then the form."""
    swapped = swap_table(rig, leads, power)
    if not rig.field_notes and swapped is None and rig.head.rig_class not in ON_THE_ROAD:
        return NoSheet(
            "field-notes", "Field notes", "No field note and no swap is entered, and the rig is of no class that tours."
        )
    cautions = care("field-notes", rig, power, name="caution_swap")
    blocks = (cautions, note_table(rig), *(() if swapped is None else (swapped,)), form_table(rig), _READING)
    return Sheet("field-notes", "Field notes", "tech and builder", blocks)


PLACE = 5
SHEET = field_notes
