"""The leads before the first buffer, one by one: `guitar.section.A1.length`, `.per-metre`, `.capacitance`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.first_section import FirstSection
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.inputs import follows, stated
from rigc.analysis.reasons.section_parts import field_of, length_of, named_first
from rigc.analysis.signal.section_leads import SectionLead
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.model.stock import Cable
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, STATED, Input, Reason

_GROWS = "physics: a cable's capacitance grows with its length"


def first_section_lead(rig: Rig, first: FirstSection, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Three reasons for each lead of each passive instrument's section."""
    marks = {lead.mark: lead for lead in leads.all}
    for base, section in named_first(first):
        instrument = rig.instruments[section.instrument]
        for part in section.leads:
            lead = marks.get(part.mark)
            cable = rig.stock.cables.get((instrument.lead_cable if lead is None else lead.cable) or "")
            metres = _length(f"{base}.{field_of(part)}", part, length_of(part, lead, instrument, lengths))
            per_metre = _per_metre(f"{base}.{field_of(part)}", part, cable)
            yield from (metres, per_metre, _capacitance(f"{base}.{field_of(part)}", part, metres, per_metre))


def _length(name: str, part: SectionLead, one: Input) -> Reason:
    rule = "as long as it is, or as it is made or bought"
    if part.length_mm is None:
        return Reason(f"{name}.length", NOT_KNOWN, "m", part.missing, (one,), rule, ARITHMETIC)
    value = decimals(part.length_mm / 1000, 3)
    formula = f"{decimals(part.length_mm)} / 1000 = {value}"
    return Reason(f"{name}.length", value, "m", formula, (one,), rule, ARITHMETIC)


def _per_metre(name: str, part: SectionLead, cable: Cable | None) -> Reason:
    what = "cable" if cable is None else f"capacitance of {cable.name}"
    fact = stated(what, None if cable is None else cable.capacitance_pf_per_m)
    value = NOT_KNOWN if part.pf_per_m is None else decimals(part.pf_per_m)
    return Reason(f"{name}.per-metre", value, "pF/m", fact.value, (fact,), "a stated figure stands", STATED)


def _capacitance(name: str, part: SectionLead, metres: Reason, per_metre: Reason) -> Reason:
    value = NOT_KNOWN if part.pf is None else decimals(part.pf, 2)
    formula = part.missing if part.pf is None else f"{metres.value} × {per_metre.value} = {value}"
    inputs = (follows("length", metres), follows("per metre", per_metre))
    return Reason(f"{name}.capacitance", value, "pF", formula, inputs, "length × capacitance per metre", _GROWS)


REASONS = first_section_lead
