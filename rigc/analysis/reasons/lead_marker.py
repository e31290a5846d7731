"""What a lead's markers must fit, and how many there are: `A14.around`, `A14.markers`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import placed
from rigc.model.rig import Rig
from rigc.traced.reason import Reason


def lead_marker(rig: Rig, leads: Leads, special: SpecialLeads) -> Iterator[Reason]:
    """Two reasons for each lead, one for each adaptor and Y lead; the jacket's only where its cable is known."""
    for lead in leads.all:
        cable = rig.stock.cables.get(lead.cable or "")
        if cable is not None:
            yield as_stated(f"{lead.mark}.around", f"the outer diameter of {cable.name}", cable.outer_mm, "mm")
        here = placed("lead", f"{lead.mark} {lead.start} -> {lead.end}", lead.span)
        value, rule = str(lead.markers), "each lead bears a marker at each end"
        yield Reason(
            f"{lead.mark}.markers", value, "", f"{value} ends = {value}", (here,), rule, "common practice, no source"
        )
    for each in special.all:
        if each.markers:
            adaptor = placed(each.kind, each.label, None)
            rule = "a Y lead bears one more at its outlet, an adaptor one at each end"
            value = str(each.markers)
            yield Reason(f"{each.mark}.markers", value, "", value, (adaptor,), rule, "common practice, no source")


REASONS = lead_marker
