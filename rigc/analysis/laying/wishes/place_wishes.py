"""The rig's wishes for places and where all stands -> by how much each is missed there, chosen places or stated ones."""

from __future__ import annotations

from collections import defaultdict

from rigc.analysis.laying.wishes.wished import missed
from rigc.analysis.laying.wishes.wishes_of_rig import wishes_for
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Deck, Hint, Place
from rigc.model.rig import Rig
from rigc.record import Record


class PlaceWish(Record):
    """A wish whose things all have places on a `deck`, missed by so many tenths of a millimetre; `deck` is None where they stand on
    two."""

    hint: Hint
    deck: Deck | None
    missed: int


class PlaceWishes(Record):
    """Those of which that can be said, in the order of the source."""

    all: tuple[PlaceWish, ...]


def place_wishes(rig: Rig, leads: Leads) -> PlaceWishes:
    """A deck without a size has no thirds and no edges: of what stands there nothing is said."""
    found: dict[Hint, PlaceWish] = {}
    there: dict[str, list[Hint]] = defaultdict(list)
    for hint in rig.hints:
        decks = {_deck(rig, place) for name in hint.named if (place := rig.places.get(name)) is not None}
        if len(decks) > 1:
            found[hint] = PlaceWish(hint, None, 0)
        elif decks and set(hint.named) <= set(rig.places):
            there[decks.pop()].append(hint)
    for name, hints in there.items():
        deck = rig.decks.get(name)
        if deck is not None and deck.width_mm is not None and deck.depth_mm is not None:
            found.update(_on(rig, deck, leads, tuple(hints)))
    return PlaceWishes(tuple(found[hint] for hint in rig.hints if hint in found))


def _deck(rig: Rig, place: Place) -> str:
    return place.deck or ("" if rig.deck is None else rig.deck.name)


def _on(rig: Rig, deck: Deck, leads: Leads, hints: tuple[Hint, ...]) -> dict[Hint, PlaceWish]:
    from rigc.analysis.laying.board_of_rig import board_of  # most rigs wish for no place

    wishing: Rig = rig.replace(hints=hints)
    board = board_of(wishing, deck, leads, ())
    names = tuple(item.name for item in board.items)
    under = frozenset(item.name for item in board.items if item.under)
    at = [(*(item.fixed or (0, 0)), 0) for item in board.items]
    wishes = wishes_for(wishing, deck, names, under, frozenset(names))
    return {hint: PlaceWish(hint, deck, missed(board, wish, at)) for hint, wish in wishes}


COMPUTE = place_wishes
