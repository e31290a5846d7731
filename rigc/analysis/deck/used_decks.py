"""Rig -> the decks that it uses, as against those that its bench files and the stock only declare."""

from __future__ import annotations

from rigc.model.deck import Deck
from rigc.model.rig import Rig


def used_decks(rig: Rig) -> tuple[Deck, ...]:
    """Those on which something stands or a panel is fixed, and the one that is meant where none is named, in order of declaration."""
    meant = rig.deck
    held = {place.deck for place in rig.places.values()} | {panel.deck for panel in rig.panels.values()}
    return tuple(deck for deck in rig.decks.values() if deck is meant or deck.name in held)
