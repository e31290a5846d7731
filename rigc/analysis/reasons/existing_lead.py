"""How long a lead is that exists already or stays off the board: `A30.length`; and what power leads carry: `D2a.volts`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.supplied import stated_length
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived
from rigc.analysis.reasons.reason import ARITHMETIC, Reason
from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig


def existing_lead(rig: Rig, leads: Leads, power: PowerAssignment) -> Iterator[Reason]:
    """The stated length of stage leads and of leads that need not be made; the voltage on a power lead."""
    for lead in leads.all:
        if lead.stage or lead.existing_mm is not None:
            yield as_stated(f"{lead.mark}.length", f"the length of {lead.mark}", stated_length(rig, lead), "mm")
        if lead.signal in ("dc", "ac") and power.of(lead.end.thing) is not None:
            yield _volts(power, lead)


def _volts(power: PowerAssignment, lead: Lead) -> Reason:
    feed = power.of(lead.end.thing)
    assert feed is not None
    each = [plain(power.loads[port].volts) for port in feed.outlets]
    value = plain(feed.volts)
    formula = f"{' + '.join(each)} = {value}" if feed.how == "series" else f"{value}, as the outlet is set"
    inputs = tuple(
        derived(str(port), volts, "V", f"{port}.volts") for port, volts in zip(feed.outlets, each, strict=True)
    )
    rule = "outlets in series add their voltages; in parallel the lowest counts"
    return Reason(f"{lead.mark}.volts", value, "V", formula, inputs, rule, ARITHMETIC)


REASONS = existing_lead
