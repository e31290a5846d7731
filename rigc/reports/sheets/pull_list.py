"""Pull list: plugs, cable, ready leads, strips and small parts that stores hand out, with spares."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.plug_uses import PlugUses
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.pulling.all_pulled import all_pulled
from rigc.facts import fastening
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.reports.cables.pull_row import pull_table
from rigc.reports.content import Paragraph, Sheet

_READING = Paragraph(
    "reading",
    (
        f"Spare is what the source says is carried; of cable {100 * WASTE_SHARE.value:g} % waste and two spare ends; of strip "
        f"{100 * fastening.ORDER_MORE.value:g} %, rounded up to {fastening.ORDER_STEP_MM.value / 1000:g} m.",
        "Leads that are not straight from one jack to one jack have a row each, with their number: hand out no other for them.",
        "Leads that are there already, and stage leads, are not pulled. A set of fixings is what one unit takes.",
    ),
    heading="How to read it",
)


def pull_list(
    rig: Rig,
    leads: Leads,
    lengths: CableLengths,
    order: StripOrder,
    special: SpecialLeads,
    labels: Labels,
    plugs: PlugUses,
) -> Sheet:
    """Item, kind, quantity, spare, total, and room for the bin."""
    pulled = all_pulled(rig, leads, lengths, order, special, labels, plugs)
    return Sheet("pull-list", "Pull list", "stores", (_READING, pull_table(pulled)))


SHEET = pull_list
