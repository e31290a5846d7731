"""What power leads carry: `D2a.volts`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.reasons.inputs import derived
from rigc.diagnostics.figures import plain
from rigc.model.jacks import Port
from rigc.traced.reason import ARITHMETIC, Reason


def existing_lead(leads: Leads, power: PowerAssignment, special: SpecialLeads) -> Iterator[Reason]:
    """The voltage on a power lead, and behind a Y lead or an adaptor."""
    for lead in leads.all:
        outlet = next((port for port in (lead.start, lead.end) if port in power.loads), None)
        if lead.make.volts is not None and outlet is not None:
            yield _volts(lead.mark, lead.make.volts, "", {outlet: lead.make.volts})
    for each in special.all:
        feed = power.of(each.units[0])
        if feed is not None and not each.itself:
            yield _volts(each.mark, feed.volts, feed.how, {port: power.loads[port].volts for port in feed.outlets})


def _volts(mark: str, volts: float, how: str, outlets: dict[Port, float]) -> Reason:
    each = [plain(one) for one in outlets.values()]
    value = plain(volts)
    formula = f"{' + '.join(each)} = {value}" if how == "series" else f"{value}, as the outlet is set"
    inputs = tuple(derived(str(port), plain(one), "V", f"{port}.volts") for port, one in outlets.items())
    rule = "outlets in series add their voltages; in parallel the lowest counts"
    return Reason(f"{mark}.volts", value, "V", formula, inputs, rule, ARITHMETIC)


REASONS = existing_lead
