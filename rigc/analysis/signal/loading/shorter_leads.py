"""A section with too much cable, and how much it may have -> how short one of its leads would have to be, and of which cable else."""

from __future__ import annotations

from math import floor

from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_leads import SectionLead
from rigc.facts.loading import LEAST_CABLE
from rigc.traced.term import known

_LEAST_MM = 100  # shorter than any lead is made


def shorter(section: Section, lead: SectionLead, most_pf: float) -> str:
    """`shorten A9 to 1.6 m at most`, rounded down; nothing where what the other leads have is too much by itself."""
    pf, per_m = known(lead.pf), known(lead.pf_per_m)
    if pf is None or not per_m:
        return ""
    room = most_pf - (float(section.known_pf) - pf)
    mm = floor((room / per_m * 1000 + 1e-6) / 10) * 10
    if mm < _LEAST_MM:
        return ""
    return f"shorten {lead.mark} to {f'{floor(mm / 100) / 10:g} m' if mm >= 1000 else f'{mm} mm'} at most"


def of_better_cable(section: Section, lead: SectionLead, most_pf: float) -> str:
    """`make it of cable of at most 80 pF/m`; nothing where no cable has so little (or the length is not known)."""
    pf, length = known(lead.pf), known(lead.length)
    if pf is None or not length:
        return ""
    per_m = floor((most_pf - (float(section.known_pf) - pf)) / length * 1000 + 1e-6)
    return f"make it of cable of at most {per_m} pF/m" if per_m >= LEAST_CABLE.value else ""
