"""A lead -> the length that the source states of it."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Instrument


def stated_length(rig: Rig, lead: Lead) -> Quantity | None:
    """The length of a lead that need not be made, in mm: as stated, as it grows out of its unit, as its instrument's own."""
    return lead.existing_mm or (instrument_lead(rig, lead) if lead.stage and lead.signal == "audio" else None)


def instrument_lead(rig: Rig, lead: Lead) -> Quantity | None:
    """The length that the instrument or source at one of its ends states of its lead."""
    ends = (rig.things[port.thing] for port in (lead.start, lead.end))
    return next((end.lead_mm for end in ends if isinstance(end, Instrument)), None)
