"""A design that was built, and what was measured on it -> how long each of its leads is."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.cables.stated_length import stated_length
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.results import Results
from rigc.model.fact import Fact, Quantity
from rigc.model.records import AsBuilt


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
