"""Leads that shall have other plugs, or be of another cable -> the edits of their statements."""

from __future__ import annotations

from collections.abc import Mapping

from rigc.analysis.leads.leads import Lead, Leads
from rigc.diagnostics.mend import AddTo, Edit, Mend, Replace
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import LeadFacts
from rigc.source import Span


def plug_edits(rig: Rig, leads: Leads, plugs: Mapping[Port, str]) -> tuple[Edit, ...]:
    """The edits that put these plug kinds into these jacks; none if that is no edit: where a lead of several legs, a lead that is part of its
    unit, or one whose other plug is not known ends there."""
    ends: dict[str, tuple[Lead, list[str | None]]] = {}
    for port, plug in plugs.items():
        at = leads.at(port)
        if len(at) != 1 or at[0].captive is not None or at[0].leg_of is not None:
            return ()
        _, kinds = ends.setdefault(at[0].mark, (at[0], list(at[0].ends)))
        for place, end in enumerate((at[0].start, at[0].end)):
            if end == port:
                kinds[place] = plug
    if any(None in kinds for _, kinds in ends.values()):
        return ()
    return tuple(_plugs(rig, lead, f"{kinds[0]} to {kinds[1]}") for lead, kinds in ends.values())


def cable_edits(rig: Rig, lead: Lead, cable: str) -> tuple[Edit, ...]:
    """The edit that makes a lead of another cable."""
    facts = _facts(rig, lead)
    if facts is None or not facts.end_spans:
        return (AddTo("leads", "", f"{lead.mark} {lead.start} -> {lead.end} of {cable}"),)
    if facts.cable_span is not None:
        return (Replace(facts.cable_span, cable),)
    return (_behind((facts.plug_spans or facts.end_spans)[-1], f" of {cable}"),)


def kinds_in_words(kinds: Mapping[Port, str]) -> str:
    """Which plugs to use where."""
    return " and ".join(f"use '{kind}' at '{port}'" for port, kind in kinds.items())


def as_mend(words: str, edits: tuple[Edit, ...]) -> tuple[tuple[Mend, ...], str]:
    """A mend if there is an edit, else the same words as help."""
    return ((Mend(words, edits),), "") if edits else ((), words)


def _plugs(rig: Rig, lead: Lead, said: str) -> Edit:
    facts = _facts(rig, lead)
    if facts is None or not facts.end_spans:
        return AddTo("leads", "", f"{lead.mark} {lead.start} -> {lead.end} {said}")
    if facts.plug_spans:
        first, last = facts.plug_spans[0], facts.plug_spans[-1]
        return Replace(first.up_to(last), said)
    return _behind(facts.end_spans[-1], f" {said}")


def _behind(span: Span, text: str) -> Edit:
    return Replace(span.behind, text)


def _facts(rig: Rig, lead: Lead) -> LeadFacts | None:
    return next((each for each in rig.lead_wishes.leads if each.mark == lead.mark), None)
