"""A design that was built, and what was measured on it -> how long each of its leads is, and what the board weighs."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.stated_length import stated_length
from rigc.analysis.results import Results
from rigc.analysis.revision.board import Board
from rigc.model.fact import Fact, Quantity
from rigc.model.records import AsBuilt
from rigc.model.rig import Rig


def built_lengths(results: Results, as_built: Iterable[AsBuilt]) -> dict[str, Quantity]:
    """Lengths in mm by lead number: as measured on the board, else as the design states, makes or buys it.

    A lead without a way and without a stated length is left out.
    """
    measured = {lead.mark: lead.length_mm for block in as_built for lead in block.leads}
    lengths = results.get(CableLengths)
    found: dict[str, Quantity] = {}
    for lead in results.get(Leads).all:
        tenths = lengths.supplied_tenths(lead.mark)
        stated = measured.get(lead.mark) or stated_length(results.rig, lead)
        if stated is not None:
            found[lead.mark] = stated
        elif tenths is not None:
            found[lead.mark] = Fact(tenths / 10, f"{tenths / 10:g} mm", lead.span)
    return found


def built_mass(designed_kg: float | None, designed: Board, built: Board, rig: Rig) -> float | None:
    """In kg; None where the design's mass is not known. Stage leads are no part of the board."""
    if designed_kg is None:
        return None
    more_kg = 0.0
    for mark, lead in built.leads.items():
        plan, cable = designed.leads.get(mark), rig.stock.cables.get(lead.cable or "")
        grams = None if cable is None else cable.mass_g_per_m
        if plan is None or plan.length is None or lead.length is None or lead.stage or grams is None:
            continue
        more_kg += (lead.length - plan.length) / 10_000 * grams.value / 1000
    return designed_kg + more_kg
