"""LeadMass: leads, their lengths and plugs -> what the leads of each signal weigh."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.ready_lead import ready_mass
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class WeighedLead(Record):
    """What of a lead is weighed: all of it, in kg, where it is bought `ready` and its stock says so; else its cable, as long as
    it is supplied (None where that is not known), and its plugs, of a Y lead the one at its outlet once."""

    lead: Lead
    ready: Quantity | None
    length_mm: float | None
    plugs: tuple[tuple[Port, str | None], ...]


class LeadMass(Record):
    """The grams of all leads of a signal that stay on the board; `missing` tells by signal a fact without which they are
    not known. A captive lead is none of those `weighed`: it weighs with its unit or brick."""

    grams: dict[str, float]
    missing: dict[str, str]
    weighed: tuple[WeighedLead, ...]


def lead_mass(rig: Rig, leads: Leads, lengths: CableLengths) -> LeadMass:
    """Cable by the length as supplied, and plugs; a ready lead as its stock says."""
    grams = {lead.signal: 0.0 for lead, _ in leads.plug_ends}
    missing: dict[str, str] = {}
    weighed = tuple(_weighed(rig, lead, lengths, plugs) for lead, plugs in leads.plug_ends if lead.captive is None)
    for each in weighed:
        for part in _parts(rig, each):
            if isinstance(part, str):
                missing.setdefault(each.lead.signal, part)
            else:
                grams[each.lead.signal] += part
    return LeadMass(grams, missing, weighed)


def _weighed(rig: Rig, lead: Lead, lengths: CableLengths, plugs: tuple[tuple[Port, str | None], ...]) -> WeighedLead:
    length = lengths.supplied_mm(lead.mark)
    return WeighedLead(lead, ready_mass(rig, lead, length), length, plugs)


def _parts(rig: Rig, each: WeighedLead) -> Iterator[float | str]:
    """The grams of a lead's cable and plugs, or which fact is missing."""
    if each.ready is not None:
        yield each.ready.value * 1000
        return
    yield _cable(rig, each)
    for port, name in each.plugs:
        plug = rig.stock.plugs.get(name or "")
        if plug is None:
            yield f"the plug kind of {each.lead.mark} at '{port}'"
        elif plug.mass_kg is not None:
            yield plug.mass_kg.value * 1000
        elif not plug.soldered:
            yield f"the mass of the plug '{plug.name}'"


def _cable(rig: Rig, each: WeighedLead) -> float | str:
    cable = rig.stock.cables.get(each.lead.cable or "")
    if each.length_mm is None:
        return f"the length of {each.lead.mark}"
    if cable is None or cable.mass_g_per_m is None:
        return f"the mass of the cable of {each.lead.mark}"
    return each.length_mm / 1000 * cable.mass_g_per_m.value


COMPUTE = lead_mass
