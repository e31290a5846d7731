"""What touches a deck of bare metal, and so is joined by it: panels with bonded jacks, and units that are bolted to it."""

from __future__ import annotations

from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.ground_link import GROUND, METAL, GroundLink, Pole


def deck_metal(rig: Rig, links: list[GroundLink], presumed: bool = False) -> list[GroundLink]:
    """The joints between the metal of decks and the grounds on it; `links` tell which panels have a bonded jack in use.

    A unit on strip or on its feet touches nothing; one that is bolted, screwed or held by brackets joins its case, which is its
    ground where a jack is bonded to it. Without a stated bushing the joint is unsure. `presumed`: a deck that does not say what it
    is made of is taken for bare metal.
    """
    found: list[GroundLink] = []
    for pole in dict.fromkeys(pole for link in links for pole in link.ends if pole[1] == METAL):
        panel = rig.panels[pole[0]]
        deck = _deck(rig, panel.deck)
        if deck is not None and _conducts(deck, presumed):
            found.append(GroundLink((pole, _metal(deck)), "metal", span=panel.declared))
    for name, place in rig.places.items():
        unit, deck = rig.units.get(name), _deck(rig, place.deck)
        if unit is not None and deck is not None and _conducts(deck, presumed) and rig.mounting.fixing_of(name):
            found += _bolted(unit, deck)
    return found


def _conducts(deck: Deck, presumed: bool) -> bool:
    return deck.bare_metal or (presumed and not deck.insulating)


def _deck(rig: Rig, name: str | None) -> Deck | None:
    return rig.deck if name is None else rig.decks.get(name)


def _metal(deck: Deck) -> Pole:
    return deck.name, METAL


def _bolted(unit: Unit, deck: Deck) -> list[GroundLink]:
    bushings = [jack.bushing for jack in unit.jacks if jack.audio]
    if "bonded" not in bushings and None not in bushings:
        return []
    unsure = None
    if "bonded" not in bushings:
        said = f"'{unit.name}', bolted to the bare metal of '{deck.name}', does not say whether its jacks are bonded to its case"
        unsure = (said, f"write `bonded` or `insulated` behind the jacks of '{unit.name}'")
    return [GroundLink(((unit.name, GROUND), _metal(deck)), "metal", unsure=unsure, span=unit.declared)]
