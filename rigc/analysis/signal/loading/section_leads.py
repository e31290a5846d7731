"""A connection of the signal path -> its lead's length and capacitance: `A1.capacitance`."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.stated_length import stated_length
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.stock import Cable
from rigc.model.things import Instrument
from rigc.model.wishes import Connection
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import stated
from rigc.traced.term import Traced, Unknown
from rigc.traced.units import LEAD_PICOFARADS

OWN_LEAD = "own lead"

ByEnds = dict[frozenset[Port], Lead]
"""The leads by their two jacks, whichever way round they are stated."""


def by_ends(leads: Leads) -> ByEnds:
    """Every lead by its two jacks."""
    return {frozenset((lead.start, lead.end)): lead for lead in leads.all}


class SectionLead(Record):
    """A lead of the section: its number (`own lead` to a body-pack), its length in mm, pF/m and pF; `missing` says why one is
    lacking."""

    mark: str
    length: Traced
    pf_per_m: Traced
    pf: AnyFigure
    missing: str
    wanted: tuple[str, str] = ("", "")

    @property
    def field(self) -> str:
        """How it is called in the name of a figure."""
        return "own-lead" if self.mark == OWN_LEAD else self.mark


def section_lead(rig: Rig, hop: Connection, leads: ByEnds, lengths: CableLengths) -> SectionLead:
    """The lead of a connection; the instrument's own where there is none on the board (to a body-pack)."""
    lead = leads.get(frozenset((hop.start, hop.end)))
    instrument = rig.instruments.get(hop.start.thing)
    mark = OWN_LEAD if lead is None else lead.mark
    length = _length(rig, lead, instrument, lengths)
    named = lead.cable if lead is not None else instrument.lead_cable if instrument is not None else None
    cable = rig.stock.cables.get(named or "")
    per_m = stated(
        f"cable of {mark}" if cable is None else f"capacitance of {cable.name}",
        None if cable is None else cable.capacitance_pf_per_m,
    )
    missing = ""
    if isinstance(length, Unknown):
        missing = f"the length of {mark} is not known"
    elif cable is None:
        missing = f"the cable of {mark} is not said"
    elif isinstance(per_m, Unknown):
        missing = f"the capacitance of the cable '{cable.name}' is not said"
    pf = figure(
        f"{mark}.capacitance" if lead is not None else f"{hop.start.thing}.own-lead.capacitance",
        length * per_m / 1000,
        LEAD_PICOFARADS,
        rule="length × capacitance per metre",
        source="physics: a cable's capacitance grows with its length",
    )
    return SectionLead(mark, length, per_m, pf, missing, _wanted(rig, lead, instrument, cable) if missing else ("", ""))


def _wanted(rig: Rig, lead: Lead | None, instrument: Instrument | None, cable: Cable | None) -> tuple[str, str]:
    """Where the length and the cable that are not stated go, and the statement, with a blank for what is to be measured. A lead between
    two things on the board has its length by its way there."""
    if cable is not None and cable.capacitance_pf_per_m is None:
        return f"write in the cable '{cable.name}'", "capacitance ___ pF/m"
    used = {each.lead_cable for each in rig.instruments.values() if each.lead_cable}
    off_board = next(iter(used)) if len(used) == 1 else "___"
    if instrument is not None and instrument.lead_mm is None:
        return f"write in '{instrument.name}'", f"lead ___ m of {off_board}"
    if lead is None:
        return "", ""
    ends = f"{lead.mark} {lead.start} -> {lead.end}"
    if lead.stage:
        balanced = any(
            (jack := rig.jack(port)) is not None and jack.connector.kind == "xlr" for port in (lead.start, lead.end)
        )
        off_board = "___" if balanced else off_board
        return (
            "write in the leads block how long it is, and of which cable",
            f"{ends} of {lead.cable or off_board} made ___ m",
        )
    if lead.cable is None:
        return "write in the leads block of which cable it is", "audio cable ___"
    return "place both its ends, or write in the leads block how long it is", f"{ends} made ___ mm"


def _length(rig: Rig, lead: Lead | None, instrument: Instrument | None, lengths: CableLengths) -> Traced:
    """In mm: as stated, else as it is made or bought."""
    own = None if instrument is None else instrument.lead_mm
    if lead is None:
        return stated(f"length of {OWN_LEAD}", own)
    fact = stated_length(rig, lead) or own
    if fact is not None:
        return stated(f"length of {lead.mark}" if lead.existing_mm is fact else f"lead of {_whose(rig, lead)}", fact)
    return lengths.supplied(lead.mark)


def _whose(rig: Rig, lead: Lead) -> str:
    """The instrument whose own lead it is."""
    return next(port.thing for port in (lead.start, lead.end) if port.thing in rig.instruments)
