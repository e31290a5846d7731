"""Sections before the first buffer -> the names of their reasons; a lead of a section -> the input that tells how long it is."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.first_section import FirstSection, InstrumentSection
from rigc.analysis.computations.leads import Lead
from rigc.analysis.reasons.inputs import derived, stated
from rigc.analysis.signal.section_leads import OWN_LEAD, SectionLead
from rigc.diagnostics.figures import millimetres
from rigc.model.things import Instrument
from rigc.traced.reason import NOT_KNOWN, Input


def named_first(first: FirstSection) -> list[tuple[str, InstrumentSection]]:
    """Every passive instrument's section with the name that its reasons begin with."""
    counts: dict[str, int] = {}
    found = []
    for section in first.sections:
        number = counts[section.instrument] = counts.get(section.instrument, 0) + 1
        if not section.active:
            found.append((f"{section.instrument}.section{'' if number == 1 else f'-{number}'}", section))
    return found


def field_of(part: SectionLead) -> str:
    """How a lead of a section is named in a reason's name."""
    return "own-lead" if part.mark == OWN_LEAD else part.mark


def length_of(part: SectionLead, lead: Lead | None, instrument: Instrument | None, lengths: CableLengths) -> Input:
    """Its stated length, that of the instrument's own lead, or the one in which it is made or bought."""
    what = f"length of {part.mark}"
    if lead is not None and lead.existing_mm is not None:
        return stated(what, lead.existing_mm)
    if instrument is not None and (
        lead is None or (lead.stage and instrument.name in (lead.start.thing, lead.end.thing))
    ):
        return stated(f"lead of {instrument.name}", instrument.lead_mm)
    if lead is None:
        return Input(what, NOT_KNOWN)
    made = lengths.lengths.get(lead.mark)
    if made is None:
        return derived(what, NOT_KNOWN, "mm", f"{lead.mark}.{'length' if lead.stage else 'route'}")
    return derived(what, millimetres(made.supplied), "mm", f"{lead.mark}.supplied")
