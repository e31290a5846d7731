"""Cut list: what to cut from which cable, how to strip it, what it takes of each reel, and what could be bought instead."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plug_uses import PlugUses
from rigc.analysis.stores.heat_shrink import HeatShrink
from rigc.analysis.stores.made_or_bought import MadeOrBought
from rigc.analysis.stores.reel_uses import ReelUses
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.front.cautions import care
from rigc.reports.leads.cut_list import cut_table, uncut
from rigc.reports.leads.lead_totals import plug_table
from rigc.reports.leads.special_words import special_words
from rigc.reports.stores.heat_shrink import heat_shrink_table
from rigc.reports.stores.made_or_bought import made_or_bought
from rigc.reports.stores.reel_tables import cut_totals, reel_table

_READING = Paragraph(
    "reading",
    (
        "Cut: the finished length and what both plugs take in. Cut one lead of each kind, fit it, then cut the rest.",
        "Strip: what is taken off jacket, screen and core, in this order (common practice, no source: check against the plug). "
        "Cut a black conductive layer back 3 mm, or it leaks from tip to sleeve.",
        "Slide plug shell, label and heat-shrink on before soldering.",
        "A spare end is the most that a plug of the batch takes in: an end that must be made anew.",
    ),
    heading="How to read it",
)


def cut_list(
    rig: Rig,
    power: PowerAssignment,
    leads: Leads,
    uses: ReelUses,
    shrink: HeatShrink,
    plugs: PlugUses,
    offers: MadeOrBought,
) -> Sheet:
    """Batch by stock, long to short, with a box to tick; totals, reels, heat-shrink, plugs; made or bought."""
    blocks = (
        care("cut-list", rig, power),
        _READING,
        cut_table(rig, uses),
        special_words(leads),
        uncut(rig, leads, uses),
        cut_totals(uses),
        reel_table(uses),
        heat_shrink_table(shrink),
        plug_table(plugs),
        made_or_bought(offers),
    )
    return Sheet("cut-list", "Cut list", "the bench", tuple(each for each in blocks if each is not None))


PLACE = 3
SHEET = cut_list
