"""Rig -> what stands on its deck though the source states no place for it; cheap, for every command asks."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.model.deck import Deck, LaterRoom
from rigc.model.rig import Rig
from rigc.model.things import Thing


def unplaced(rig: Rig) -> tuple[Thing, ...]:
    """What stands on the deck (see `on_deck`) and has no stated place; none without a deck of the rig's own with a size.

    Where all units have stated places, a supply that no hint names is a brick that lies elsewhere.
    """
    deck = own_deck(rig)
    if deck is None or deck.width_mm is None:
        return ()
    things = tuple(thing for thing in on_deck(rig) if thing.name not in rig.places)
    if any(thing.kind != "supply" for thing in things):
        return things
    hinted = _hinted(rig)
    return tuple(thing for thing in things if thing.name in hinted)


def open_rooms(rig: Rig) -> tuple[LaterRoom, ...]:
    """The rooms for later things that have no place yet; none without a deck of the rig's own with a size."""
    deck = own_deck(rig)
    if deck is None or deck.width_mm is None or any(room.chosen for room in rig.reserved_rooms):
        return ()
    return rig.later_rooms


def as_stated(rig: Rig) -> Rig:
    """The rig without what was chosen with places: of things and of rooms, and plugs."""
    places = {name: place for name, place in rig.places.items() if not place.chosen}
    rooms = tuple(room for room in rig.reserved_rooms if not room.chosen)
    stated: Rig = rig.replace(places=places, reserved_rooms=rooms, chosen_plugs=())
    return stated


def on_deck(rig: Rig) -> tuple[Thing, ...]:
    """The used units, the amps and desks that have a place or a hint, and the supplies that feed or have either; without what stands off
    the board."""
    named = _hinted(rig) | set(rig.places)
    units = (unit for unit in used_units(rig) if unit.kind == "unit" or unit.name in named)
    below = named | {*rig.power.others, *(port.thing for feed in rig.power.feeds for port in feed.outlets)}
    things = (*units, *(supply for supply in rig.supplies.values() if supply.name in below))
    return tuple(each for each in things if each.name not in rig.off_board)


def own_deck(rig: Rig) -> Deck | None:
    """The deck that places count on, unless it is only one of the generic stock."""
    deck = rig.deck
    return None if deck is None or deck.declared.source.name.startswith("stock/") else deck


def _hinted(rig: Rig) -> set[str]:
    return {name for hint in rig.hints for name in hint.named}
