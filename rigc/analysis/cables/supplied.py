"""A lead and its reckoned length -> how long it is as it is supplied: what lies on the board, is bought, or is made."""

from __future__ import annotations

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.cable_lengths import Length
from rigc.analysis.computations.leads import Lead
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.things import Instrument


def stated_length(rig: Rig, lead: Lead) -> Quantity | None:
    """The length of a lead that need not be made, in mm: as stated, as it grows out of its unit, as its instrument's own."""
    return lead.existing_mm or (_instrument_lead(rig, lead) if lead.stage else None)


def supplied_length(rig: Rig, lead: Lead, length: Length | None) -> int | None:
    """In whole tenths of a millimetre: the stated length, else as it is bought or made; None where it has no way."""
    stated = stated_length(rig, lead)
    if stated is not None:
        return tenths(stated.value)
    return None if length is None else length.supplied


def supplied_mm(rig: Rig, lead: Lead, length: Length | None) -> float | None:
    """The same in mm."""
    stated = stated_length(rig, lead)
    if stated is not None:
        return stated.value
    return None if length is None else length.supplied / 10


def supplied_assumed(rig: Rig, lead: Lead, length: Length | None) -> bool:
    """Whether that leans on an assumed fact."""
    stated = stated_length(rig, lead)
    return stated.assumed if stated is not None else length is not None and length.assumed


def _instrument_lead(rig: Rig, lead: Lead) -> Quantity | None:
    ends = (rig.things[port.thing] for port in (lead.start, lead.end))
    return next((end.lead_mm for end in ends if isinstance(end, Instrument)), None)
