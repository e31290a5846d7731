"""A thing and a deck -> whether the thing goes below it."""

from __future__ import annotations

from rigc.facts import clearance
from rigc.model.deck import Deck
from rigc.model.things import Supply, Thing, Unit


def hangs(thing: Thing, deck: Deck) -> bool:
    """Whether a thing goes below the deck: it has nothing for a foot and sees no aerial, and the room there will do.

    A supply hangs; so does a unit through which no sound goes or that is passive, if it has no switch, knob, treadle or
    loop and no bypass that someone would stamp on.
    """
    if thing.height_mm is None or deck.clearance_mm is None:
        return False
    if thing.height_mm.value + clearance.UNDERSIDE_MM.value > deck.clearance_mm.value:
        return False
    return isinstance(thing, Supply) or not for_a_foot(thing)


def for_a_foot(thing: Thing) -> bool:
    """Whether a foot or an aerial needs a thing on top, facing the player; where nothing tells, it does."""
    if isinstance(thing, Supply):
        return False
    worked = thing.switches or thing.knobs or thing.treadle_mm is not None or thing.loops
    stamped = isinstance(thing, Unit) and thing.bypass is not None
    radio = any(jack.connector.kind == "wireless" for jack in thing.jacks)
    sounding = any(jack.audio for jack in thing.jacks) and "passive" not in thing.flags
    return bool(worked or stamped or radio or sounding or not thing.jacks)
