"""Y, series, parallel, reversing and size leads."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, RELABEL, REWIRE, Aspect
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.rig import Rig


def special_leads(rig: Rig, special: SpecialLeads) -> Iterator[Aspect]:
    """A special lead that is also a lead by itself (a reversing one) is told as both."""
    spans = {each.mark: each.mark_span for each in rig.lead_wishes.leads}
    spans |= {each.mark: each.span for each in rig.lead_wishes.adaptors}
    for each in special.all:
        kind, span = "special lead", spans.get(each.mark)
        origin = DESIGN if each.stated else COMPUTED
        ends = f"{words(each.outlets)} to {words(each.units)}"
        yield Aspect(kind, each.mark, "", f"{each.kind}: {ends}", True, origin, (REWIRE,), span)
        yield Aspect(kind, each.mark, "sort", each.kind, each.kind, origin, (REWIRE,), span)
        yield Aspect(kind, each.mark, "ends", ends, exact((each.outlets, each.units)), origin, (REWIRE,), span)
        plugs = f"{each.plugs[0]} to {each.plugs[1]}"
        yield Aspect(kind, each.mark, "plugs", plugs, each.plugs, origin, (REWIRE,), span)
        if each.lines:
            yield Aspect(kind, each.mark, "label", each.label, each.label, COMPUTED, (RELABEL,), span)


ASPECTS = special_leads
