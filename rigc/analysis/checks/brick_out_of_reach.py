"""A captive power lead is shorter than its way, or a supply has nowhere to sit.

Why it matters: what grows out of a unit or a brick can't be exchanged for a longer one; and a brick that lies loose in the
case pulls its lead out, or breaks.
What to do: move supply and unit nearer together, or give the brick a place on or under the deck.
Source: geometry on stated sizes. The slack that a lead needs beyond its way is judged by unfit-lead-length.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "brick-out-of-reach",
    Level.WARNING,
    __doc__,
    "a captive power lead is as long as its way; every supply in use has a place",
    "geometry on stated sizes",
)


def brick_out_of_reach(rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths) -> Iterator[Diagnostic]:
    """One finding for each lead that is too short and each supply without a place on a board that places other things."""
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if (
            lead.captive is None
            or lead.captive_mm is None
            or length is None
            or lead.signal not in ("dc", "ac", "mains")
        ):
            continue
        has = tenths(lead.captive_mm.value)
        if has < length.route:
            yield KIND.at(
                lead.captive_mm.span,
                f"the captive lead {lead.mark} of '{lead.captive.thing}' is {has / 10:g} mm and its way is "
                f"{length.route / 10:g} mm: {(length.route - has) / 10:g} mm short",
                subject=(lead.mark, lead.captive.thing),
                label="this long",
                numbers=(Number("length", has / 10, "mm"), Number("route", length.route / 10, "mm")),
                help=f"move '{lead.start.thing}' and '{lead.end.thing}' {(length.route - has) / 10:g} mm or more together",
            )
    if rig.places:
        yield from _without_place(rig, power)


def _without_place(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    hinted = {hint.thing for hint in rig.hints}
    for name in dict.fromkeys(port.thing for port in power.loads):
        if name not in rig.places and name not in hinted:
            fed = [feed.unit for feed in power.feeds if any(port.thing == name for port in feed.outlets)]
            yield KIND.at(
                rig.supplies[name].declared,
                f"'{name}' feeds {listed(fed)} and has no place on the board"
                if fed
                else f"'{name}' has no place on the board",
                subject=(name,),
                label="nowhere to sit",
                help=f"write where it sits, for example {name} under at 100, 200 mm",
            )


CHECK = brick_out_of_reach
