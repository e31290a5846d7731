"""LeadMass: leads, their lengths and plugs -> what the leads of each signal weigh."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.ready_lead import ready_mass
from rigc.analysis.cables.supplied import supplied_mm
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class LeadMass(Record):
    """The grams of all leads of a signal that stay on the board; `missing` tells by signal a fact without which they are
    not known."""

    grams: dict[str, float]
    missing: dict[str, str]


def lead_mass(rig: Rig, leads: Leads, lengths: CableLengths) -> LeadMass:
    """Cable by the length as supplied, and plugs; a ready lead as its stock says. Legs of a Y lead share the plug at their outlet."""
    grams: dict[str, float] = {}
    missing: dict[str, str] = {}
    plugged: set[Port] = set()
    for lead in leads.all:
        if lead.stage:
            continue
        grams.setdefault(lead.signal, 0.0)
        for part in _lead(rig, lead, lengths, plugged):
            if isinstance(part, str):
                missing.setdefault(lead.signal, part)
            else:
                grams[lead.signal] += part
    return LeadMass(grams, missing)


def _lead(rig: Rig, lead: Lead, lengths: CableLengths, plugged: set[Port]) -> Iterator[float | str]:
    """The grams of a lead's cable and plugs, or which fact is missing; a captive lead weighs with its unit or brick."""
    if lead.captive is not None:
        return
    ready = ready_mass(rig, lead, lengths.lengths.get(lead.mark))
    if ready is not None:
        yield ready.value * 1000
        return
    yield _cable(rig, lead, lengths)
    for port, name in zip((lead.start, lead.end), lead.ends, strict=True):
        if lead.leg_of is not None and port in plugged:
            continue
        plugged.add(port)
        plug = rig.stock.plugs.get(name or "")
        if plug is None:
            yield f"the plug kind of {lead.mark} at '{port}'"
        elif plug.mass_kg is not None:
            yield plug.mass_kg.value * 1000
        elif not plug.soldered:
            yield f"the mass of the plug '{plug.name}'"


def _cable(rig: Rig, lead: Lead, lengths: CableLengths) -> float | str:
    known_mm = supplied_mm(rig, lead, lengths.lengths.get(lead.mark))
    cable = rig.stock.cables.get(lead.cable or "")
    if known_mm is None:
        return f"the length of {lead.mark}"
    if cable is None or cable.mass_g_per_m is None:
        return f"the mass of the cable of {lead.mark}"
    return known_mm / 1000 * cable.mass_g_per_m.value


COMPUTE = lead_mass
