"""A deck and its cases -> the levels of a section, in mm over the deck's upper surface: the floor, the lid, the inside's top."""

from __future__ import annotations

from math import radians, tan

from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.ways.case_of import cases_for
from rigc.record import Record


class Limit(Record):
    """A level above the deck and what it is."""

    over_mm: float
    words: str


def floor_at(deck: Deck, behind_mm: float) -> float:
    """The floor so far behind the deck's front edge: its clearance counts at the front, and the deck rises from there."""
    thickness = 0.0 if deck.thickness_mm is None else deck.thickness_mm.value
    clear = 0.0 if deck.clearance_mm is None else deck.clearance_mm.value
    rise = 0.0 if deck.angle_deg is None else behind_mm * tan(radians(deck.angle_deg.value))
    return -thickness - clear - rise


def limits_above(rig: Rig, deck: Deck) -> tuple[Limit, ...]:
    """Of the cases that the deck travels in, the first lid that is stated, and the first inside; no inside where the deck's height in it
    is not stated, or no level."""
    cases = cases_for(rig, deck.name)
    lid = next((case.lid_mm.value for case in cases if case.lid_mm is not None), None)
    found = [] if lid is None else [Limit(lid, f"lid, {lid:g} over deck")]
    inside = next((case.inside_mm[2] for case in cases if case.inside_mm is not None), None)
    known = deck.clearance_mm is not None and deck.thickness_mm is not None and deck.angle_deg is None
    if inside is not None and known:
        found.append(Limit(inside + floor_at(deck, 0.0), f"case inside, {inside:g}"))
    return tuple(found)
