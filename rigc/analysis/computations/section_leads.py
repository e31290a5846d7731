"""A connection before the first active input -> its lead's length and capacitance."""

from __future__ import annotations

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.model.wishes import Connection
from rigc.record import Record

OWN_LEAD = "own lead"


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


def section_lead(rig: Rig, instrument: Instrument, hop: Connection, leads: Leads, lengths: CableLengths) -> SectionLead:
    """The lead of a connection; the instrument's own where there is none on the board (to a body-pack)."""
    lead = next((each for each in leads.all if {each.start, each.end} == {hop.start, hop.end}), None)
    own = hop.start.thing == instrument.name
    mark = OWN_LEAD if lead is None else lead.mark
    stated = (
        lead.existing_mm if lead is not None and lead.existing_mm is not None else instrument.lead_mm if own else None
    )
    length = stated.value if stated is not None else None if lead is None else _made_mm(rig, lead, lengths)
    cable = rig.stock.cables.get((lead.cable if lead is not None else instrument.lead_cable) or "")
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


def _made_mm(rig: Rig, lead: Lead, lengths: CableLengths) -> float | None:
    """The length of a lead still to be made, in mm: as finished, or as bought where the rig buys its leads."""
    length = lengths.lengths.get(lead.mark)
    if length is None:
        return None
    bought = dict(rig.lead_wishes.cutting).get(lead.signal) == "premade" and length.premade is not None
    return length.premade / 10 if bought and length.premade is not None else length.finished_mm
