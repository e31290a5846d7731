"""What a board weighs as designed, and how long its leads really are -> what it weighs as it is built."""

from __future__ import annotations

from rigc.analysis.computations.board import Board
from rigc.model.rig import Rig


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
