"""A spare lead travels that can stand in for no lead of the rig: none is of its signal, or it is shorter than all of them.

Why it matters: at the show it is the lead that is taken out first, and it does not reach.
What to do: carry one as long as the longest lead that it is for, or leave it at home.
Source: arithmetic on the lengths of the leads.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.leads.lengths.lead_spares import spare_tenths, spares_asked, straight_stands_in
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.rig import Rig

KIND = Kind(
    "idle-spare",
    Level.REMARK,
    __doc__,
    "a spare lead is as long as one lead at least for which it can stand in",
    "arithmetic on the lengths of the leads",
)


def idle_spare(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Diagnostic]:
    """One finding for each such statement; none where a lead of its signal has no length yet, or where it is told as too short for the spare
    that the rig shall carry (too-few-spares)."""
    told = {span for each in spares_asked(rig, leads, lengths) if each.carried < each.number for span in each.too_short}
    for spare in rig.spares:
        if spare.span in told:
            continue
        signal = spare.what.removesuffix(" lead")
        if spare.length_mm is None or spare.what == signal or not rig.connections:
            continue
        own = [lead for lead in leads.all if lead.signal == signal and (lead.stage or straight_stands_in(lead))]
        known = [(length, lead.mark) for lead in own if (length := spare_tenths(lengths, lead)) is not None]
        if len(known) < len(own):
            continue
        shortest, mark = min(known, default=(0, ""))
        if own and tenths(spare.length_mm.value) >= shortest:
            continue
        why = (
            f"the shortest {signal} lead, {mark}, is {shortest / 10:g} mm"
            if own
            else f"the rig has no {signal} lead that it is for"
        )
        yield KIND.at(
            spare.span,
            f"this spare {signal} lead of {spare.length_mm.typed} stands in for none: {why}",
            subject=(rig.head.name, signal),
            label="fits nothing",
            numbers=(Number(f"shortest {signal} lead", shortest / 10, "mm"),) if own else (),
            mends=(Mend(f"delete `{spare.span.text}`", (Delete(spare.span),)),),
            help="carry one as long as the longest lead that it is for",
        )


CHECK = idle_spare
