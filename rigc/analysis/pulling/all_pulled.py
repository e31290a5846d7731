"""Leads, lengths and strips -> all that stores hand out, in the order of the pull list."""

from __future__ import annotations

from rigc.analysis.cables.reel_use import reel_uses
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.plug_uses import PlugUses
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.pulling.pulled import Pulled
from rigc.analysis.pulling.pulled_leads import bought, cables, further, plugs, special
from rigc.analysis.pulling.pulled_strips import fixings, strips
from rigc.model.rig import Rig


def all_pulled(
    rig: Rig,
    leads: Leads,
    lengths: CableLengths,
    order: StripOrder,
    specials: SpecialLeads,
    labels: Labels,
    plug_uses: PlugUses,
) -> tuple[Pulled, ...]:
    """Plugs, cable, leads that come ready, special leads, strips, fixings, and what is left."""
    return (
        *plugs(rig, plug_uses),
        *cables(reel_uses(rig, leads, lengths)),
        *bought(rig, leads, lengths),
        *special(rig, leads, lengths, specials),
        *strips(order),
        *fixings(rig),
        *further(rig, labels, specials),
    )
