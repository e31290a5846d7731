"""Sections of the signal path -> the leads that a passive instrument drives in some state: the ones that hear most."""

from __future__ import annotations

from rigc.analysis.computations.loading import Loading


def from_pickup(loading: Loading) -> dict[str, str]:
    """By number of the lead, the state in words in which it is so; the first such state counts."""
    found: dict[str, str] = {}
    for section in loading.played:
        if section.from_pickup and any(lead.mark not in found for lead in section.leads):
            state = loading.first_state(section).name
            for lead in section.leads:
                found.setdefault(lead.mark, state)
    return found
