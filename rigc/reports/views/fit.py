"""Fit: which decks of the stock take these units, what is left over, and the smallest rectangle that would."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import Sheet


def fit(rig: Rig, leads: Leads) -> Sheet:
    """The two tables; the search is loaded only for a rig that asks for them."""
    from rigc.analysis.laying import fit as fitting
    from rigc.reports.laying.fit_tables import deck_table, fit_note, smallest_table

    found = fitting.fit(rig, leads)
    return Sheet("fit", "Fit", "builder", (deck_table(found), smallest_table(found), fit_note(rig, found)))


VIEW = fit
