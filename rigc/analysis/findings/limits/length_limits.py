"""Leads that exist, heights -> those that guesses drive near a limit."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.findings.near_limit import Guess, NearLimit, guessed, near, nearest
from rigc.analysis.leads.lead_plugs import socket
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.facts.clearance import LID_FOAM_MM, UNDERSIDE_MM
from rigc.model.rig import Rig
from rigc.model.things import Thing


def lengths_near(rig: Rig, leads: Leads, lengths: CableLengths) -> list[NearLimit]:
    """The lengths of leads that exist against the shortest that will do and the longest that makes no coil."""
    found = []
    for lead in leads.all:
        length, existing = lengths.lengths.get(lead.mark), lead.existing_mm
        if length is None or existing is None:
            continue
        limit = nearest(existing.value, (length.least / 10, length.most / 10))
        guess = _behind(rig, lead)
        if guess is not None and near(existing.value, limit):
            found.append(NearLimit(guess, f"the length of {lead.mark}", existing.value, limit, "mm"))
    return found


def heights_near(rig: Rig, placement: Placement) -> list[NearLimit]:
    """Assumed heights against the lids of cases and the clearance below decks."""
    lids = [case.lid_mm.value - LID_FOAM_MM.value for case in rig.cases.values() if case.lid_mm is not None]
    found = []
    for body in placement.outlines.values():
        thing = rig.things[body.thing]
        fact = thing.height_mm if isinstance(thing, Thing) else None
        if fact is None or body.height_mm is None or not guessed(fact):
            continue
        height = body.height_mm + (0.0 if body.under else body.raised_mm)
        found += [
            NearLimit(Guess(body.thing, f"the height of '{body.thing}'", fact), _room(body), height, limit, "mm")
            for limit in (_below(rig, body) if body.under else lids)
            if near(height, limit)
        ]
    return found


def _room(body: Outline) -> str:
    return "what hangs under the deck" if body.under else "what stands under the lid"


def _below(rig: Rig, body: Outline) -> list[float]:
    deck = rig.decks.get(body.deck or "")
    room = None if deck is None else deck.clearance_mm
    return [] if room is None else [room.value - UNDERSIDE_MM.value]


def _behind(rig: Rig, lead: Lead) -> Guess | None:
    """The first assumed fact behind a lead's way: where its jacks lie, how large their things are."""
    if guessed(lead.existing_mm) and lead.existing_mm is not None:
        return Guess(lead.mark, f"the length of {lead.mark}", lead.existing_mm)
    for port in (lead.start, lead.end):
        jack, thing = socket(rig, port), rig.things[port.thing]
        facts = (
            [(jack.offset_mm, f"the place of '{port}'"), (jack.height_mm, f"the height of '{port}'")] if jack else []
        )
        if isinstance(thing, Thing):
            facts += [
                (thing.width_mm, f"the width of '{port.thing}'"),
                (thing.depth_mm, f"the depth of '{port.thing}'"),
            ]
        for fact, what in facts:
            if fact is not None and guessed(fact):
                return Guess(port.thing, what, fact)
    return None
