"""A lead -> the input that says how long it is as it is supplied."""

from __future__ import annotations

from rigc.analysis.cables.stated_length import stated_length
from rigc.analysis.computations.cable_lengths import Length
from rigc.analysis.computations.leads import Lead
from rigc.analysis.reasons.inputs import derived
from rigc.diagnostics.figures import millimetres, plain
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Input


def supplied_input(rig: Rig, lead: Lead, length: Length | None) -> Input:
    """The length of a lead that exists, else the one with which it is made or bought."""
    stated = stated_length(rig, lead)
    if stated is not None:
        return derived(f"{lead.mark}, as it is", plain(stated.value), "mm", f"{lead.mark}.length")
    if length is None:
        return derived(f"{lead.mark} as supplied", NOT_KNOWN, "mm", f"{lead.mark}.route")
    return derived(f"{lead.mark} as supplied", millimetres(length.supplied), "mm", f"{lead.mark}.supplied")
