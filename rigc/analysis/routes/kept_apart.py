"""Leads -> which of them should keep apart, and how far: only audio keeps away from what feeds power, and most what a pickup drives."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead
from rigc.analysis.signal.loading.loading import Loading
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM


def apart_mm(one: Lead, other: Lead) -> float | None:
    """The distance in mm below which they run beside each other; None for leads that may lie together."""
    signals = {one.signal, other.signal}
    if signals == {"audio", "dc"}:
        return BESIDE_DC_MM.value
    return BESIDE_AC_MM.value if signals in ({"audio", "ac"}, {"audio", "mains"}) else None


def from_pickup(loading: Loading) -> dict[str, str]:
    """By number of the lead, the state in words in which it is so; the first such state counts."""
    found: dict[str, str] = {}
    for section in loading.played:
        if section.from_pickup and any(lead.mark not in found for lead in section.leads):
            state = loading.first_state(section).name
            for lead in section.leads:
                found.setdefault(lead.mark, state)
    return found
