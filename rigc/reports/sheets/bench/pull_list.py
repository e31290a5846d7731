"""Pull list: plugs, cable, ready leads, strips and small parts that stores hand out, with spares."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.stores.pull_list import PullList
from rigc.facts import fastening
from rigc.facts.leads import WASTE_SHARE
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.stores.pull_row import pull_table

_READING = Paragraph(
    "reading",
    (
        f"Spare is what the source says is carried; of cable {100 * WASTE_SHARE.value:g} % waste and two spare ends; of strip "
        f"{100 * fastening.ORDER_MORE.value:g} %, rounded up to {fastening.ORDER_STEP_MM.value / 1000:g} m.",
        "Leads that are not straight from one jack to one jack have a row each, with their number: hand out no other for them.",
        "Zones are those of the plan: where a thing that is for one place goes. Strip, plugs and plain leads go to many: see their sheets.",
        "Leads that are there already, and stage leads, are not pulled. A set of fixings is what one unit takes.",
    ),
    heading="How to read it",
)


def pull_list(pulled: PullList, zones: Zones) -> Sheet:
    """Item, kind, where on the board it goes, quantity, spare, total, and room for the bin."""
    return Sheet("pull-list", "Pull list", "stores", (_READING, pull_table(pulled, zones)))


PLACE = 5
SHEET = pull_list
