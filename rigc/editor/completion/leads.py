"""In the leads block -> numbers, and the whole lines of leads that have none yet."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Leads
from rigc.editor.completion.offer import Offer
from rigc.editor.completion.spot import Spot
from rigc.editor.computed import Computed
from rigc.editor.draft import Draft

_BEHIND = ("retired", "tie", "and", "by", "on", "touches", ",", "at")


def marks(spot: Spot, draft: Draft, computed: Computed | None) -> Iterator[Offer]:
    """Numbers of leads where an existing one is named."""
    if spot.block == "leads" and not spot.words:
        return
    if spot.last not in _BEHIND and not (spot.block == "as-built" and not spot.words):
        return
    if spot.words[:1] and spot.words[0] in ("country", "origin", "band"):
        return
    if computed is not None:
        yield from (Offer(each.mark, "lead", f"{each.start} -> {each.end}") for each in computed.get(Leads).all)
    elif draft.rig is not None:
        for lead in draft.rig.lead_wishes.leads:
            yield Offer(lead.mark, "lead", f"{lead.start} -> {lead.end}")


def whole_leads(draft: Draft, computed: Computed | None) -> Iterator[Offer]:
    """A line for each lead that was given a number and is not stated."""
    if computed is None or draft.rig is None:
        return
    stated = {lead.mark for lead in draft.rig.lead_wishes.leads}
    for lead in computed.get(Leads).all:
        if not lead.stated and lead.mark not in stated and lead.leg_of is None and lead.signal != "mains":
            line = f"{lead.mark} {lead.start} -> {lead.end}"
            yield Offer(line, "lead", f"{lead.signal}, numbered by rigc", rank=1)
