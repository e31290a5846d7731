"""Leads -> how those are made that are not straight from one jack to one jack, as sentences for the bench."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.reports.content import Paragraph


def special_words(leads: Leads) -> Paragraph | None:
    """A line for each such lead, and for each MIDI lead whose shield is joined at both ends; None if all are straight."""
    lines = tuple(
        f"{lead.mark} ({lead.signal}, {lead.start} to {lead.end}): {lead.make.words}."
        for lead in leads.all
        if lead.make.words
    )
    return (
        Paragraph("special-leads", lines, heading="Not straight: make, mark and test these as said") if lines else None
    )
