"""A lead that is bought in a length of the stock -> what it costs and weighs."""

from __future__ import annotations

from typing import TypeVar

from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead
from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.model.fact import Choice, Quantity
from rigc.model.rig import Rig

T = TypeVar("T")


def ready_mass(rig: Rig, lead: Lead, supplied_mm: float | None) -> Quantity | None:
    """What a lead weighs, in kg, plugs and all, that is bought in a length whose mass the stock states; a Y lead is none of the list."""
    if lead.leg_of is not None:
        return None
    return _listed(rig.stock.premade_kg, rig, lead, supplied_mm)


def ready_price(rig: Rig, lead: Lead, supplied_mm: float | None) -> Choice | None:
    """What a lead costs that is bought in a length whose price the stock states; the list is of straight leads, between two plugs."""
    return _listed(rig.stock.premade_price, rig, lead, supplied_mm) if _straight(lead) else None


def next_mass(rig: Rig, lead: Lead, length: Length) -> Quantity | None:
    """What a straight lead of the next premade length weighs, in kg, bought or not; None where that is not stated."""
    return _next(rig.stock.premade_kg, rig, lead, length)


def next_price(rig: Rig, lead: Lead, length: Length) -> Choice | None:
    """What it costs; None where that is not stated."""
    return _next(rig.stock.premade_price, rig, lead, length)


def _straight(lead: Lead) -> bool:
    return lead.leg_of is None and not lead.make.turned


def _next(stated: dict[str, dict[float, T]], rig: Rig, lead: Lead, length: Length) -> T | None:
    if length.premade is None or not _straight(lead):
        return None
    return _of_list(stated, rig, lead, length.premade / 10)


def _listed(stated: dict[str, dict[float, T]], rig: Rig, lead: Lead, supplied_mm: float | None) -> T | None:
    if supplied_mm is None or status(rig, lead) != "buy":
        return None
    return _of_list(stated, rig, lead, supplied_mm)


def _of_list(stated: dict[str, dict[float, T]], rig: Rig, lead: Lead, length_mm: float) -> T | None:
    return stated.get(rig.stock.premade_list(lead.signal), {}).get(length_mm)
