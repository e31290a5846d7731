"""What the leads of a class weigh: `audio.mass`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.ready_lead import ready_mass
from rigc.analysis.cables.supplied import supplied_mm
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.lead_mass import LeadMass
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.inputs import stated
from rigc.analysis.reasons.reason import ARITHMETIC, NOT_KNOWN, Input, Reason
from rigc.analysis.reasons.supplied_input import supplied_input
from rigc.diagnostics.figures import kilograms, plain
from rigc.model.jacks import Port
from rigc.model.rig import Rig


def lead_mass(rig: Rig, leads: Leads, lengths: CableLengths, masses: LeadMass) -> Iterator[Reason]:
    """One reason for each class of lead on the board."""
    ready = {
        lead.mark: mass
        for lead in leads.all
        if (mass := ready_mass(rig, lead, lengths.lengths.get(lead.mark))) is not None
    }
    plugs = _plugs(rig, leads, frozenset(ready))
    for signal, grams in masses.grams.items():
        own = [lead for lead in leads.all if lead.signal == signal and not lead.stage and lead.captive is None]
        cables = dict.fromkeys(lead.cable for lead in own if lead.mark not in ready and lead.cable is not None)
        terms = [plain(round(ready[lead.mark].value * 1000, 6)) for lead in own if lead.mark in ready]
        inputs: list[Input] = [stated(f"{lead.mark}, ready", ready[lead.mark]) for lead in own if lead.mark in ready]
        for cable in cables:
            batch = [lead for lead in own if lead.cable == cable and lead.mark not in ready]
            inputs += [supplied_input(rig, lead, lengths.lengths.get(lead.mark)) for lead in batch]
            metres = sum(supplied_mm(rig, lead, lengths.lengths.get(lead.mark)) or 0.0 for lead in batch) / 1000
            per_metre = rig.stock.cables[cable].mass_g_per_m
            inputs.append(stated(f"{cable} weighs", per_metre))
            terms.append(f"{plain(metres)} × {plain(per_metre.value) if per_metre else '?'}")
        for name, count in plugs.get(signal, {}).items():
            mass = rig.stock.plugs[name].mass_kg
            inputs.append(stated(f"plug {name} weighs", mass))
            terms.append(f"{count} × {plain(round(mass.value * 1000, 6)) if mass else '?'}")
        missing = masses.missing.get(signal)
        value = NOT_KNOWN if missing else kilograms(grams / 1000)
        formula = f"for want of {missing}" if missing else f"({' + '.join(terms) or '0'}) / 1000 = {value}"
        rule = "cable by its length × its mass per metre, and the plugs; a ready lead as its stock says; the legs of a Y lead share the plug at the outlet"
        yield Reason(f"{signal}.mass", value, "kg", formula, tuple(inputs), rule, ARITHMETIC)


def _plugs(rig: Rig, leads: Leads, ready: frozenset[str]) -> dict[str, dict[str, int]]:
    """How many plugs of each kind weigh on the leads of each class; legs of a Y lead share the one at the outlet."""
    plugged: set[Port] = set()
    found: dict[str, dict[str, int]] = {}
    for lead in leads.all:
        for port, name in zip((lead.start, lead.end), lead.ends, strict=True):
            shared = lead.leg_of is not None and port in plugged
            if lead.stage or lead.captive is not None or lead.mark in ready or shared:
                continue
            plugged.add(port)
            if name is not None and rig.stock.plugs[name].mass_kg is not None:
                counts = found.setdefault(lead.signal, {})
                counts[name] = counts.get(name, 0) + 1
    return found


REASONS = lead_mass
