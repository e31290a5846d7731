"""Power leads, Y leads and adaptors -> the voltage on each: `D2a.volts`."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import volts_of
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import VOLTS


class LeadVolts(Record):
    """By number of the lead or adaptor, in V; of a lead or adaptor that takes its power nowhere there is none."""

    all: dict[str, Figure]


def lead_volts(leads: Leads, power: PowerAssignment, special: SpecialLeads) -> LeadVolts:
    """What the outlets give at which they take their power."""
    found = {}
    for lead in leads.all:
        outlet = next((port for port in (lead.start, lead.end) if port in power.loads), None)
        if lead.make.volts is not None and outlet is not None:
            found[lead.mark] = _volts(power, lead.mark, "", (outlet,))
    for each in special.all:
        feed = power.of(each.units[0])
        if feed is not None and not each.itself:
            found[each.mark] = _volts(power, each.mark, feed.how, feed.outlets)
    return LeadVolts(found)


def _volts(power: PowerAssignment, mark: str, how: str, outlets: Iterable[Port]) -> Figure:
    return known_figure(
        f"{mark}.volts",
        volts_of(how, [power.loads[port].volts for port in outlets]),
        VOLTS,
        rule="outlets in series add their voltages; in parallel the lowest counts",
        source=ARITHMETIC,
    )


COMPUTE = lead_volts
