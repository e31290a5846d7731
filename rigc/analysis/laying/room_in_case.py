"""A deck that travels in a case and a thing -> how far back it may stand before it is too tall, on the plain deck and on each tier."""

from __future__ import annotations

from itertools import islice, pairwise

from rigc.analysis.deck.case_height import height_in_case, parked_mm
from rigc.analysis.deck.placement import Outline
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts import clearance
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.model.ways.case_of import cases_for
from rigc.record import Record


class TooTall(Record):
    """A thing that its case leaves no room for: how tall it stands, and what the lid, or all of the inside, leaves."""

    case: str
    by_lid: bool
    height_mm: float
    room_mm: float


def rearmost(rig: Rig, deck: Deck, thing: Thing) -> tuple[tuple[int, int], ...]:
    """Pairs (height it stands at, the furthest that its rear may be) in tenths of a millimetre, only where something is too tall.

    Where it is too tall everywhere, no place mends that: then it stands as low as it can. Where no stretch is as deep as the thing, it has
    no place anyway.
    """
    assert deck.depth_mm is not None
    deepest = tenths(deck.depth_mm.value)
    raised = tuple(
        each for each in dict.fromkeys((0.0, *(tier.raised_mm for tier in deck.tiers))) if _has_room(deck, thing, each)
    )
    if not raised:
        return ()
    found = tuple((each, _rear(rig, deck, thing, each, deepest)) for each in raised)
    if max(rear for _, rear in found) < tenths(thing.depth_mm.value if thing.depth_mm is not None else 0.0):
        found = tuple((each, deepest if each == min(raised) else 0) for each in raised)
    return () if all(rear == deepest for _, rear in found) else tuple((tenths(each), rear) for each, rear in found)


def _has_room(deck: Deck, thing: Thing, raised_mm: float) -> bool:
    """Whether some stretch of the deck at that height is as deep as a thing, turned or not."""
    assert deck.depth_mm is not None
    tiers = sorted((tier.front_mm, tier.rear_mm, tier.raised_mm) for tier in deck.tiers)
    plain = pairwise((0.0, *(edge for front, rear, _ in tiers for edge in (front, rear)), deck.depth_mm.value))
    stretches = (
        [*islice(plain, 0, None, 2)] if raised_mm == 0.0 else [each[:2] for each in tiers if each[2] == raised_mm]
    )
    least = min(each.value for each in (thing.width_mm, thing.depth_mm) if each is not None)
    return any(rear - front >= least for front, rear in stretches)


def too_tall(rig: Rig, deck: Deck, thing: Thing, raised_mm: float, rear_mm: float) -> TooTall | None:
    """What a case lacks for a thing that stands so high and with its rear so far back: under the lowest lid, else in the roomiest inside."""
    height = None if thing.height_mm is None else thing.height_mm.value
    body = Outline(thing.name, 0.0, 0.0, 0.0, rear_mm, height, raised_mm, False, deck.name)
    cases, parked, foam = cases_for(rig, deck.name), parked_mm(rig, body), clearance.LID_FOAM_MM.value
    lids = [(case.lid_mm.value - foam, case.name) for case in cases if case.lid_mm is not None]
    if parked is not None and lids and parked > min(lids)[0]:
        return TooTall(min(lids)[1], True, parked, min(lids)[0])
    top = height_in_case(rig, deck, body)
    insides = [(case.inside_mm[2] - foam, case.name) for case in cases if case.inside_mm is not None]
    if top is not None and insides and top.top_mm > max(insides)[0]:
        return TooTall(max(insides)[1], False, top.top_mm, max(insides)[0])
    return None


def _rear(rig: Rig, deck: Deck, thing: Thing, raised_mm: float, deepest: int) -> int:
    """By halves, because a deck at an angle rises to the rear; 0 where it is too tall even at the front."""
    if too_tall(rig, deck, thing, raised_mm, deepest / 10) is None:
        return deepest
    low, high = 0, deepest
    while high - low > 1:
        middle = (low + high) // 2
        if too_tall(rig, deck, thing, raised_mm, middle / 10) is None:
            low = middle
        else:
            high = middle
    return low
