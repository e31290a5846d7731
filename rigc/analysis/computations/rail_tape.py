"""RailTape: decks in use -> where the tape on their rails lies, seen from above."""

from __future__ import annotations

from rigc.facts import fastening
from rigc.model.deck import Deck
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record


class RailTape(Record):
    """The tapes by deck, in the order of the rails, in mm: shorter than the deck is wide, and centred on it.

    A deck of unknown width has none.
    """

    tapes: dict[str, tuple[Rectangle, ...]]

    def of(self, deck: str) -> tuple[Rectangle, ...]:
        """The tapes of one deck."""
        return self.tapes.get(deck, ())


def rail_tape(rig: Rig) -> RailTape:
    """The tape of every taped rail, for all decks on which something has its place."""
    first = rig.deck.name if rig.deck is not None else ""
    used = {place.deck or first for place in rig.places.values()}
    return RailTape({deck.name: _tapes(deck) for deck in rig.decks.values() if deck.name in used})


def _tapes(deck: Deck) -> tuple[Rectangle, ...]:
    if deck.width_mm is None:
        return ()
    shorter = fastening.TAPE_SHORTER_MM.value
    length = deck.width_mm.value - shorter
    return tuple(
        Rectangle(shorter / 2, rail.tape_front_mm, length, rail.tape_rear_mm - rail.tape_front_mm)
        for rail in deck.rails
        if rail.tape_front_mm is not None and rail.tape_rear_mm is not None
    )


COMPUTE = rail_tape
