"""Cable list: every lead with its ends, plugs, route, lengths and labels; stage leads, adaptors and totals."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.revision.rework import Rework
from rigc.analysis.stores.bought_leads import BoughtLeads
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.front.cautions import care
from rigc.reports.front.sheet_codes import see
from rigc.reports.leads.lead_table import lead_table, stuck_table
from rigc.reports.leads.lead_totals import totals_table
from rigc.reports.leads.off_board import adaptor_table, stage_table
from rigc.reports.leads.special_words import special_words
from rigc.reports.revision.changed_rows import changed, marked

_READING = Paragraph(
    "reading",
    (
        "Finished: from where the cable leaves one plug to where it leaves the other, slack included.",
        "Cut: finished, and what both plugs take in. Next premade: the shortest stock length that will do.",
        "Routes are reckoned from the facts entered. Lay one lead of each kind before you cut the rest: the "
        f"{see('cut-list')} has them in the order of cutting.",
    ),
    heading="How to read it",
)


def cable_list(
    rig: Rig,
    power: PowerAssignment,
    special: SpecialLeads,
    leads: Leads,
    routes: CableRoutes,
    lengths: CableLengths,
    labels: Labels,
    bought: BoughtLeads,
    rework: Rework,
) -> Sheet:
    """The sheet for the bench; a lead that has no length keeps its row, and the reason is told."""
    signs, adaptors = {"id": changed(rework).leads}, adaptor_table(special)
    blocks = (
        _READING,
        marked(lead_table(rig, leads, lengths, labels, bought), signs),
        special_words(leads),
        stuck_table(leads, routes),
        totals_table(lengths, bought),
        marked(stage_table(rig, leads, lengths, labels), signs),
        None if adaptors is None else marked(adaptors, signs),
        care("cable-list", rig, power),
    )
    return Sheet(
        "cable-list", "Cable list", "builder and bench", tuple(each for each in blocks if each is not None), True
    )


PLACE = 2
SHEET = cable_list
