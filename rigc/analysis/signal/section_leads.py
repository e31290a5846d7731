"""A connection of the signal path -> its lead's length and capacitance."""

from __future__ import annotations

from rigc.analysis.cables.supplied import stated_length, supplied_mm
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection
from rigc.record import Record

OWN_LEAD = "own lead"

ByEnds = dict[frozenset[Port], Lead]
"""The leads by their two jacks, whichever way round they are stated."""


def by_ends(leads: Leads) -> ByEnds:
    """Every lead by its two jacks."""
    return {frozenset((lead.start, lead.end)): lead for lead in leads.all}


class SectionLead(Record):
    """A lead of the section: its number (`own lead` to a body-pack), mm, pF/m and pF; `missing` says why one is None."""

    mark: str
    length_mm: float | None
    pf_per_m: float | None
    missing: str
    assumed: bool

    @property
    def pf(self) -> float | None:
        """Its capacitance in pF."""
        return None if self.length_mm is None or self.pf_per_m is None else self.length_mm * self.pf_per_m / 1000


def section_lead(rig: Rig, hop: Connection, leads: ByEnds, lengths: CableLengths) -> SectionLead:
    """The lead of a connection; the instrument's own where there is none on the board (to a body-pack)."""
    lead = leads.get(frozenset((hop.start, hop.end)))
    instrument = rig.instruments.get(hop.start.thing)
    mark = OWN_LEAD if lead is None else lead.mark
    own = None if instrument is None else instrument.lead_mm
    stated = own if lead is None else stated_length(rig, lead) or own
    length = stated.value if stated is not None else None
    if length is None and lead is not None:
        length = supplied_mm(rig, lead, lengths.lengths.get(lead.mark))
    named = lead.cable if lead is not None else instrument.lead_cable if instrument is not None else None
    cable = rig.stock.cables.get(named or "")
    per_m = None if cable is None else cable.capacitance_pf_per_m
    missing = ""
    if length is None:
        missing = f"the length of {mark} is not known"
    elif cable is None:
        missing = f"the cable of {mark} is not said"
    elif per_m is None:
        missing = f"the capacitance of the cable '{cable.name}' is not said"
    assumed = any(fact is not None and fact.assumed for fact in (stated, per_m))
    return SectionLead(mark, length, None if per_m is None else per_m.value, missing, assumed)
