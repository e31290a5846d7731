"""A rig's wishes for places -> the wishes of a board."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Wish
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts import clearance
from rigc.model.deck import Deck, Hint
from rigc.model.rig import Rig
from rigc.model.things import Thing

Wished = tuple[tuple[Hint, Wish], ...]


def wishes_for(rig: Rig, deck: Deck, names: tuple[str, ...], under: frozenset[str], free: frozenset[str]) -> Wished:
    """Those about things of this deck, of which one at least is still `free`, each as the rig has it and by the numbers of the things."""
    return tuple(
        (hint, _wish(rig, deck, hint, names, under))
        for hint in rig.hints
        if set(hint.named) <= set(names) and set(hint.named) & free
    )


def side_wished(rig: Rig, thing: Thing, deck: Deck) -> bool | None:
    """Whether it is wished to hang beneath the deck, where the room there takes it; None where nothing is wished."""
    for hint in rig.hints:
        if hint.kind == "stands" and thing.name in hint.things and _is_of(deck, hint.others[0]):
            return hint.word == "beneath" and not lacks_below(thing, deck)
    return None


def lacks_below(thing: Thing, deck: Deck) -> int:
    """How much lower the room beneath the deck is than a thing needs, in tenths of a millimetre; 0 where that can't be said."""
    if thing.height_mm is None or deck.clearance_mm is None:
        return 0
    return max(0, tenths(thing.height_mm.value + clearance.UNDERSIDE_MM.value - deck.clearance_mm.value))


def heel_mm(deck: Deck) -> float:
    """How deep the deck is kept free for the player's heel at its front edge; 0 where nothing is said."""
    return 0.0 if deck.heel_mm is None else deck.heel_mm.value


def _wish(rig: Rig, deck: Deck, hint: Hint, names: tuple[str, ...], under: frozenset[str]) -> Wish:
    items = tuple(map(names.index, hint.things))
    if hint.kind == "stands":
        thing = rig.things[hint.things[0]]
        lacks = lacks_below(thing, deck) if isinstance(thing, Thing) and hint.word == "beneath" else 0
        if not _is_of(deck, hint.others[0]):
            return Wish(hint.kind, items, "on" if hint.things[0] in under else "beneath")
        ends = next(((tier.front_mm, tier.rear_mm) for tier in deck.tiers if tier.name == hint.others[0]), (0.0, 0.0))
        return Wish(hint.kind, items, hint.word, (), lacks, tenths(ends[0]), tenths(ends[1]))
    others = tuple(map(names.index, hint.others))
    amount = None if hint.amount_mm is None else tenths(hint.amount_mm)
    if hint.kind == "near_edge" and hint.word == "front":
        amount = tenths(heel_mm(deck))
    return Wish(hint.kind, items, hint.word, others, amount)


def _is_of(deck: Deck, ground: str) -> bool:
    return ground == deck.name or any(tier.name == ground for tier in deck.tiers)
