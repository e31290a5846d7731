"""Leads, plugs, cables and spares -> what stores hand out for the leads."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_make import adaptor_word
from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.plug_uses import PlugUses
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.stores.heat_shrink import HeatShrink
from rigc.analysis.stores.pulled import Pulled, counted, of_leads, pulled
from rigc.analysis.stores.reel_uses import ReelUses
from rigc.diagnostics.figures import plain
from rigc.diagnostics.wording import joined
from rigc.model.records import Spare
from rigc.model.rig import Rig
from rigc.traced.given import mentioned
from rigc.traced.means import total


def plugs(rig: Rig, uses: PlugUses) -> Iterator[Pulled]:
    """Plugs to be fitted here by kind, and those carried as spares."""
    fitted = {use.kind: use.to_fit for use in uses.all}
    for kind in rig.stock.plugs:
        spares = [each for each in rig.spares if each.what == f"plug {kind}" and each.length_mm is None]
        if fitted.get(kind) or spares:
            yield pulled(kind, "plug", fitted.get(kind), carried=spares)


def cables(uses: ReelUses, shrink: HeatShrink) -> Iterator[Pulled]:
    """Cable by the metre: as cut, and what waste and spare ends take more; and the heat-shrink for its ends."""
    for use in uses.all:
        yield pulled(use.cable or "cable not stated", "cable", use.cut, taken=use.take, unit="m")
    for each in shrink.all:
        yield pulled(f"heat-shrink for {each.cable or 'cable not stated'}", "heat-shrink", each.taken, unit="m")


def bought(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Pulled]:
    """Straight leads that come ready, by signal and length, and spare leads."""
    found: dict[tuple[str, float, str], tuple[list[Lead], list[Spare]]] = {}
    for lead in leads.all:
        if not lead.stage and not lead.make.special and status(rig, lead) == "buy":
            found.setdefault((f"{lead.signal} lead", *_supplied(rig, lead, lengths)), ([], []))[0].append(lead)
    for spare in rig.spares:
        if spare.length_mm is not None:
            found.setdefault((spare.what, spare.length_mm.value, ""), ([], []))[1].append(spare)
    for (what, length, more), (own, carried) in sorted(found.items(), key=lambda each: each[0]):
        kind = "premade lead" if own else "spare lead"
        quantity = counted(lead.mark for lead in own) if own else None
        yield pulled(f"{what} {_millimetres(length)}{more}", kind, quantity, *of_leads(own), carried=carried)


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
        yield pulled(name, _come_by(how), counted((lead.mark,)), *of_leads((lead,)), at=_ends((lead,)))
    for mark, each in legs.items():
        how = "make" if any(status(rig, lead) == "make" for lead in each) else "buy"
        turned = ", REVERSED" if any(lead.make.turned for lead in each) else ""
        ways = joined(_millimetres(_supplied(rig, lead, lengths)[0]) for lead in each)
        name = f"{mark}: {each[0].signal} Y lead, legs of {ways}{turned}"
        yield pulled(name, _come_by(how), counted((mark,)), *of_leads(each), at=_ends(each))
    for adaptor in specials.all:
        if not adaptor.itself and adaptor.kind != "Y":
            thing = adaptor_word(adaptor.kind)
            name = f"{adaptor.mark}: {adaptor.kind} {thing} for {' + '.join(adaptor.units)}"
            about = mentioned(adaptor.kind, adaptor.label)
            yield pulled(name, "adaptor", counted((adaptor.mark,)), about, at=adaptor.units)


def _ends(leads: Iterable[Lead]) -> Iterator[str]:
    return (str(port) for lead in leads for port in (lead.start, lead.end))


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
    of_specials = (each.markers for each in specials.all if each.markers is not None)
    markers = (*labels.markers.values(), *of_specials)
    if markers:
        yield pulled("markers", "label", total(markers))
    told: dict[str, list[Spare]] = {}
    for spare in rig.spares:
        if spare.length_mm is None and not spare.what.startswith("plug "):
            told.setdefault(spare.what, []).append(spare)
    for what, spares in told.items():
        yield pulled(what, "spare", None, carried=spares)
