"""A rig and a deck with rails -> the strips under a thing, how much of them must lie on tape, and how much of that it lacks at a place."""

from __future__ import annotations

from math import ceil

from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.mounting.mounting_strip import needed_cm2, strip_count, strip_middle
from rigc.facts import fastening
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.things import Thing

Tape = tuple[int, int]  # front and rear of a rail's tape
Band = tuple[
    int, int, int
]  # front and rear of a strip, from the front edge of its thing, and how far it reaches across
_HAIR = 1e-6


def tapes(deck: Deck, under: bool) -> tuple[Tape, ...]:
    """Where the tape lies on the rails of a deck, or on the undersides of these, in tenths of a millimetre."""
    return tuple(
        (tenths(rail.tape_front_mm), tenths(rail.tape_rear_mm))
        for rail in deck.rails
        if rail.tape_front_mm is not None and rail.tape_rear_mm is not None and (rail.both_faces or not under)
    )


def grip(rig: Rig, thing: Thing) -> int:
    """How much of its strips must lie on tape, in hundredths of a square millimetre: as much as holds its mass, the least there is where
    the pull of its strip is not known; 0 where it is not held by strips alone or a fact is missing."""
    strip = rig.stock.strips.get(rig.mounting.strip_of(thing.name) or "")
    bridged = any(name == thing.name for name, _ in rig.mounting.bridged)
    if strip is None or bridged or rig.mounting.fixing_of(thing.name) is not None:
        return 0
    if not (strip.width_mm and thing.mass_kg and thing.width_mm and thing.depth_mm):
        return 0
    if not strip.pull_kpa:
        return 1
    return ceil(float(needed_cm2(thing.mass_kg.value, strip.pull_kpa.value)) * 10_000 - _HAIR)


def bands(rig: Rig, thing: Thing, turned: int) -> tuple[Band, ...]:
    """The strips under a thing that `grip` holds, as they lie when it is turned, in tenths of a millimetre."""
    strip = rig.stock.strips[rig.mounting.strip_of(thing.name) or ""]
    assert strip.width_mm is not None and thing.mass_kg is not None
    assert thing.width_mm is not None and thing.depth_mm is not None
    width, depth, wide = thing.width_mm.value, thing.depth_mm.value, strip.width_mm.value
    count = strip_count(width, thing.mass_kg.value).strips
    long = max(0.0, depth - fastening.PIECE_SHORTER_MM.value)
    pieces = (
        Rectangle(strip_middle(width, at, count) - wide / 2, (depth - long) / 2, wide, long).turned_within(
            width, depth, turned
        )
        for at in range(1, count + 1)
    )
    return tuple((tenths(piece.y_mm), tenths(piece.rear_mm), tenths(piece.width_mm)) for piece in pieces)


def lacking(rails: tuple[Tape, ...], needed: int, strips: tuple[Band, ...], front: int) -> int:
    """How much longer the strips of a thing whose front edge is there must lie on tape; on one rail alone at least a little."""
    held, met = 0, 0
    for low, high in rails:
        shared = sum(
            across * max(0, min(rear + front, high) - max(first + front, low)) for first, rear, across in strips
        )
        held, met = held + shared, met + (shared > 0)
    short = needed - held
    whole = sum(across for *_, across in strips)
    return max(0 if short <= 0 else -(-short // max(1, whole)), 1 if met == 1 else 0)
