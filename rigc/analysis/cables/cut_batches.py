"""Leads that are made at the bench -> batches by cable, and what they take with the usual waste."""

from __future__ import annotations

from rigc.analysis.cables.lead_status import status
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig


def cut_batches(rig: Rig, leads: Leads, lengths: CableLengths) -> list[tuple[str | None, list[tuple[Lead, int]]]]:
    """The leads to be cut and their cut lengths in tenths of a millimetre, by cable in the order of the stock, longest first."""
    batches: dict[str | None, list[tuple[Lead, int]]] = {cable: [] for cable in (*rig.stock.cables, None)}
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if length is not None and length.cut is not None and status(rig, lead) == "make":
            batches[lead.cable].append((lead, length.cut))
    return [(cable, sorted(batch, key=lambda each: -each[1])) for cable, batch in batches.items() if batch]


def with_waste_cm(total: int) -> int:
    """What a total in tenths of a millimetre takes with the usual waste, in cm, part ones counted as whole."""
    return -(-total * (100 + round(100 * WASTE_SHARE.value)) // 10_000)
