"""Leads, plugs, cables and spares -> what stores hand out for the leads."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.cut_batches import plugs_on_leads
from rigc.analysis.cables.heat_shrink import shrink_cm, shrink_pieces
from rigc.analysis.cables.lead_status import status
from rigc.analysis.cables.reel_use import ReelUse
from rigc.analysis.computations.cable_lengths import CableLengths, Length
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.pulling.pulled import Pulled
from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig


def plugs(rig: Rig, leads: Leads) -> Iterator[Pulled]:
    """Plugs to be fitted here by kind, and those carried as spares."""
    fitted = [plug for lead, plug in plugs_on_leads(rig, leads) if status(rig, lead) == "make"]
    spare = _spare(rig, "plug ")
    for kind in rig.stock.plugs:
        if kind in fitted or kind in spare:
            yield Pulled(kind, "plug", "", fitted.count(kind), spare.get(kind, 0))


def cables(uses: tuple[ReelUse, ...]) -> Iterator[Pulled]:
    """Cable by the metre: as cut, and what waste and spare ends take more; and the heat-shrink for its ends."""
    for use in uses:
        cut_m = use.cut / 10_000
        yield Pulled(use.cable or "cable not stated", "cable", "m", cut_m, use.taken_cm / 100 - cut_m)
    for use in uses:
        yield Pulled(f"heat-shrink for {use.cable}", "heat-shrink", "m", shrink_cm(shrink_pieces(use)) / 100)


def bought(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Pulled]:
    """Leads that come ready, by signal and length, and spare leads; the legs of a Y lead are one thing."""
    counts: dict[tuple[str, float], list[int]] = {}
    legs: dict[str, list[float]] = {}
    for lead in leads.all:
        if lead.stage or status(rig, lead) != "buy":
            continue
        length = _premade_mm(lead, lengths.lengths.get(lead.mark))
        if lead.leg_of is not None:
            legs.setdefault(f"{lead.signal} Y lead {lead.leg_of}", []).append(length)
        else:
            counts.setdefault((f"{lead.signal} lead", length), [0, 0])[0] += 1
    for spare in rig.spares:
        if spare.length_mm is not None:
            counts.setdefault((spare.what, spare.length_mm.value), [0, 0])[1] += spare.count
    for (what, length), (quantity, more) in sorted(counts.items()):
        kind = "premade lead" if quantity else "spare lead"
        yield Pulled(f"{what} {_millimetres(length)}", kind, "", quantity, more)
    for name, each in legs.items():
        yield Pulled(f"{name}, legs of {' and '.join(map(_millimetres, each))}", "premade lead", "", 1)


def _premade_mm(lead: Lead, length: Length | None) -> float:
    """What it is bought as, as the source states or as the next premade length; 0 where that is not known."""
    if lead.made_mm is not None:
        return lead.made_mm.value
    return 0.0 if length is None or length.premade is None else length.premade / 10


def _millimetres(length: float) -> str:
    return f"{plain(length)} mm" if length else "of unknown length"


def further(rig: Rig, leads: Leads) -> Iterator[Pulled]:
    """Markers, adaptors, and spares told in words."""
    if leads.all:
        yield Pulled("markers", "label", "", 2 * len(leads.all))
    kinds = [adaptor.kind for adaptor in rig.lead_wishes.adaptors]
    for kind in dict.fromkeys(kinds):
        yield Pulled(f"{kind} adaptor", "adaptor", "", kinds.count(kind))
    for spare in rig.spares:
        if spare.length_mm is None and not spare.what.startswith("plug "):
            yield Pulled(spare.what, "spare", "", 0, spare.count)


def _spare(rig: Rig, before: str) -> dict[str, int]:
    found: dict[str, int] = {}
    for spare in rig.spares:
        if spare.what.startswith(before) and spare.length_mm is None:
            kind = spare.what.removeprefix(before)
            found[kind] = found.get(kind, 0) + spare.count
    return found
