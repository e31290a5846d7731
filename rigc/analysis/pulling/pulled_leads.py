"""Leads, plugs, cables and spares -> what stores hand out for the leads."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.heat_shrink import shrink_cm, shrink_pieces
from rigc.analysis.cables.lead_make import adaptor_word
from rigc.analysis.cables.lead_status import status
from rigc.analysis.cables.reel_use import ReelUse
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.plug_uses import PlugUses
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.pulling.pulled import Pulled
from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig


def plugs(rig: Rig, uses: PlugUses) -> Iterator[Pulled]:
    """Plugs to be fitted here by kind, and those carried as spares."""
    fitted = {use.kind: use.to_fit for use in uses.all}
    spare = _spare(rig, "plug ")
    for kind in rig.stock.plugs:
        if fitted.get(kind) or kind in spare:
            yield Pulled(kind, "plug", "", fitted.get(kind, 0), spare.get(kind, 0))


def cables(uses: tuple[ReelUse, ...]) -> Iterator[Pulled]:
    """Cable by the metre: as cut, and what waste and spare ends take more; and the heat-shrink for its ends."""
    for use in uses:
        cut_m = use.cut / 10_000
        yield Pulled(use.cable or "cable not stated", "cable", "m", cut_m, use.taken_cm / 100 - cut_m)
    for use in uses:
        yield Pulled(
            f"heat-shrink for {use.cable or 'cable not stated'}",
            "heat-shrink",
            "m",
            shrink_cm(shrink_pieces(use)) / 100,
        )


def bought(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Pulled]:
    """Straight leads that come ready, by signal and length, and spare leads."""
    counts: dict[tuple[str, float, str], list[int]] = {}
    for lead in leads.all:
        if not lead.stage and not lead.make.special and status(rig, lead) == "buy":
            counts.setdefault((f"{lead.signal} lead", *_supplied(rig, lead, lengths)), [0, 0])[0] += 1
    for spare in rig.spares:
        if spare.length_mm is not None:
            counts.setdefault((spare.what, spare.length_mm.value, ""), [0, 0])[1] += spare.count
    for (what, length, more), (quantity, carried) in sorted(counts.items()):
        kind = "premade lead" if quantity else "spare lead"
        yield Pulled(f"{what} {_millimetres(length)}{more}", kind, "", quantity, carried)


def special(rig: Rig, leads: Leads, lengths: CableLengths, specials: SpecialLeads) -> Iterator[Pulled]:
    """Leads and adaptors that are not straight from one jack to one jack, each in a row of its own: none can be taken for
    another. The legs of a Y lead are one thing."""
    legs: dict[str, list[Lead]] = {}
    for lead in leads.all:
        how = status(rig, lead)
        if lead.stage or not lead.make.special or how == "keep":
            continue
        if lead.leg_of is not None:
            legs.setdefault(lead.leg_of, []).append(lead)
            continue
        length, more = _supplied(rig, lead, lengths)
        name = f"{lead.mark}: {lead.signal} lead {_millimetres(length)}{more}, {lead.make.kind}"
        yield Pulled(name, _come_by(how), "", 1)
    for mark, each in legs.items():
        how = "make" if any(status(rig, lead) == "make" for lead in each) else "buy"
        turned = ", REVERSED" if any(lead.make.turned for lead in each) else ""
        ways = " and ".join(_millimetres(_supplied(rig, lead, lengths)[0]) for lead in each)
        yield Pulled(f"{mark}: {each[0].signal} Y lead, legs of {ways}{turned}", _come_by(how), "", 1)
    for adaptor in specials.all:
        if not adaptor.itself and adaptor.kind != "Y":
            thing = adaptor_word(adaptor.kind)
            yield Pulled(f"{adaptor.mark}: {adaptor.kind} {thing} for {' + '.join(adaptor.units)}", "adaptor", "", 1)


def _come_by(how: str) -> str:
    return "made at the bench" if how == "make" else "premade lead"


def _supplied(rig: Rig, lead: Lead, lengths: CableLengths) -> tuple[float, str]:
    """How long it is in mm (0 where that is not known), and what is to be said of a length that no list has."""
    length = lengths.lengths.get(lead.mark)
    found = lengths.supplied_mm(lead.mark)
    if found is None or length is None or lead.made_mm is not None or status(rig, lead) != "buy":
        return found or 0.0, ""
    if length.premade is not None:
        return found, ""
    return found, ", to order: none so long in stock" if length.premade_listed else " or more"


def _millimetres(length: float) -> str:
    return f"{plain(length)} mm" if length else "of unknown length"


def further(rig: Rig, labels: Labels, specials: SpecialLeads) -> Iterator[Pulled]:
    """Markers, and spares told in words."""
    markers = sum(labels.markers.values()) + sum(each.markers or 0 for each in specials.all)
    if markers:
        yield Pulled("markers", "label", "", markers)
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
