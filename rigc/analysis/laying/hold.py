"""A rig and a deck with rails -> how much of its strips a unit must lay on their tape, and how much it lacks at a place."""

from __future__ import annotations

from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.mounting.mounting_strip import needed_cm2, strip_count
from rigc.facts import fastening
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing

Tape = tuple[int, int]  # front and rear of a rail's tape


def tapes(deck: Deck) -> tuple[Tape, ...]:
    """Where the tape lies on the rails of a deck, in tenths of a millimetre."""
    return tuple(
        (tenths(rail.tape_front_mm), tenths(rail.tape_rear_mm))
        for rail in deck.rails
        if rail.tape_front_mm is not None and rail.tape_rear_mm is not None
    )


def grip(rig: Rig, thing: Thing) -> int:
    """How long each strip of a unit must lie on tape, in tenths of a millimetre; 0 where it is not held by strips or a
    fact is missing."""
    strip = rig.stock.strips.get(rig.mounting.strip_of(thing.name) or "")
    named = any(name == thing.name for name, _ in rig.mounting.strips)
    if strip is None or (rig.mounting.fixing_of(thing.name) is not None and not named):
        return 0
    if not (strip.pull_kpa and strip.width_mm and thing.mass_kg and thing.width_mm):
        return 0
    count = strip_count(thing.width_mm.value, thing.mass_kg.value).strips
    needed_mm2 = needed_cm2(thing.mass_kg.value, strip.pull_kpa.value) * 100
    return -tenths(-needed_mm2 / (count * strip.width_mm.value) - 0.05)


def lacking(rails: tuple[Tape, ...], needed: int, front: int, rear: int) -> int:
    """How much a unit from `front` to `rear` lacks of that, each strip centred under it; on one rail alone at least a little."""
    margin = tenths(fastening.PIECE_SHORTER_MM.value) // 2
    held = [max(0, min(rear - margin, tape[1]) - max(front + margin, tape[0])) for tape in rails]
    return max(0, needed - sum(held), 1 if sum(each > 0 for each in held) == 1 else 0)
