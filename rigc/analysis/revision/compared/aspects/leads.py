"""Leads: by number, their ends, plugs, cable, lengths and label texts."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.conductors_of_lead import lead_conductors
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_plugs import appliance_inlets
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, PAPER, RELABEL, REWIRE, Aspect
from rigc.analysis.revision.compared.words import exact, words
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.model.wishes import LeadFacts


def leads(rig: Rig, leads: Leads, lengths: CableLengths, labels: Labels) -> Iterator[Aspect]:
    """Where a unit has moved a lead's number stays, and only what differs asks for work. What the source says of a lead is
    design, and so are its ends, unless they follow from an outlet that was chosen."""
    facts = {each.mark: each for each in rig.lead_wishes.leads}
    for lead in leads.all:
        said = facts.get(lead.mark)
        wired = _by(lead.stated or lead.signal not in ("dc", "ac"))
        yield _aspect(lead, "", _whole(rig, lead, lengths.supplied_tenths(lead.mark)), True, (REWIRE,), wired)
        for end, port in (("first end", str(lead.start)), ("second end", str(lead.end))):
            yield _aspect(lead, end, port, port, (REWIRE,), wired)
        inlets = _set_for(rig, lead)
        yield _aspect(lead, "plugs", _plugs(lead, inlets), inlets or lead.ends, (REWIRE,), _by(lead.plugs_stated))
        cabled = _by(said is not None and said.cable is not None)
        yield _aspect(lead, "cable", lead.cable or "not known", lead.cable, (REWIRE,), cabled)
        yield from _lengths(lead, lengths)
        yield _aspect(lead, "signal", lead.signal, lead.signal, (REWIRE,), wired)
        yield from _stated(lead, said)
        yield _aspect(lead, "wiring", _wiring(rig, lead), lead.make.conductors, (REWIRE,), wired)
        for end, text in zip(("first", "second"), labels.texts.get(lead.mark, ()), strict=False):
            yield _aspect(lead, f"label, {end} end", text, text, (RELABEL,))


def _wiring(rig: Rig, lead: Lead) -> str:
    """How its conductors are joined, in words."""
    forms = [form.upper() for form in lead.make.forms if form is not None]
    types = f" (type {' to '.join(forms)})" if forms else ""
    return (
        lead_conductors(rig, lead) if lead.signal in ("midi", "control") else lead.make.turned or "straight"
    ) + types


def _by(stated: bool) -> str:
    return DESIGN if stated else COMPUTED


def _whole(rig: Rig, lead: Lead, tenths: int | None) -> str:
    plugs = _plugs(lead, _set_for(rig, lead))
    parts = (lead.cable, None if tenths is None else f"{millimetres(tenths)} mm", plugs)
    return f"{lead.start} to {lead.end}: {', '.join(filter(None, parts))}"


def _set_for(rig: Rig, lead: Lead) -> tuple[str, ...]:
    """The inlets of a mains lead that is bought as a set: no plug of the stock is on it."""
    return () if any(lead.ends) else appliance_inlets(rig, lead.start, lead.end)


def _plugs(lead: Lead, inlets: tuple[str, ...]) -> str:
    if inlets:
        return f"lead set for {' and '.join(inlets)}"
    plugs = [plug or ("captive" if lead.captive else "not known") for plug in lead.ends]
    return " to ".join(plugs)


def _lengths(lead: Lead, lengths: CableLengths) -> Iterator[Aspect]:
    length, tenths = lengths.lengths.get(lead.mark), lengths.supplied_tenths(lead.mark)
    text = "not known" if tenths is None else f"{millimetres(tenths)} mm"
    yield _aspect(lead, "length", text, tenths, (REWIRE,), _by(lead.made_mm is not None))
    if length is not None:
        yield _aspect(lead, "route", f"{millimetres(length.route)} mm", length.route, detail=True)
        if length.cut is not None:
            yield _aspect(lead, "cut", f"{millimetres(length.cut)} mm", length.cut, detail=True)


def _stated(lead: Lead, said: LeadFacts | None) -> Iterator[Aspect]:
    """What the source asks for beside the ends, plugs, cable and length."""
    if said is None:
        return
    if said.run is not None:
        yield _aspect(lead, "stated way", said.run, said.run, (REWIRE,), DESIGN)
    if said.through_mm:
        lines = ", ".join(f"{line:g}" for line in said.through_mm)
        yield _aspect(lead, "stated drop lines", f"{lines} mm", said.through_mm, (REWIRE,), DESIGN)
    if said.slack_mm is not None:
        yield _aspect(lead, "slack of its own", words(said.slack_mm), exact(said.slack_mm), (REWIRE,), DESIGN)
    if said.made_in:
        yield _aspect(lead, "made in", said.made_in, said.made_in, (PAPER,), DESIGN)


def _aspect(
    lead: Lead,
    field: str,
    text: str,
    value: object,
    work: tuple[str, ...] = (PAPER,),
    origin: str = COMPUTED,
    detail: bool = False,
) -> Aspect:
    return Aspect("lead", lead.mark, field, text, value, origin, work, lead.span, detail)


ASPECTS = leads
