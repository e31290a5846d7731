"""A thing and a deck -> whether the thing goes below it, and whether it may stand on either side."""

from __future__ import annotations

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.analysis.laying.at_hand import is_receiver
from rigc.analysis.laying.wishes.wishes_of_rig import lacks_below, side_wished
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Supply, Thing, Unit

_UNTOUCHED = "always-on"  # a unit without a bypass; if it has no switch and no knob either, nobody touches it


def hangs(thing: Thing, deck: Deck) -> bool:
    """Whether a thing goes below the deck: nothing on it needs the top, no sound goes through it, and the room there will do.

    A supply hangs; so does a unit through which no sound goes or that is passive, if it has no switch, knob, treadle or
    loop and no bypass that someone would stamp on.
    """
    return may_hang(thing, deck) and not _sounding(thing)


def either_side(rig: Rig, thing: Thing, deck: Deck, wished: bool = False) -> bool:
    """Whether it may stand on top or hang below as room is: nothing on it needs the top, the room below will do, and (unless `wished` shall
    not count) no wish says where. A unit that plays and is always on goes on top where there is room, and hangs else."""
    free = wished or side_wished(rig, thing, deck) is None
    return free and may_hang(thing, deck)


def may_hang(thing: Thing, deck: Deck) -> bool:
    """Whether the room below the deck will do for a thing on which nothing needs the top."""
    return _fits_below(thing, deck) and not needs_top(thing)


def needs_top(thing: Thing) -> bool:
    """Whether a foot, a hand or an aerial needs a thing on top, facing the player; where nothing tells, it does."""
    if isinstance(thing, Supply):
        return False
    worked = worked_by_hand(thing) or thing.switches or thing.knobs or thing.treadle_mm is not None or thing.loops
    bypass = thing.bypass.value if isinstance(thing, Unit) and thing.bypass is not None else None
    untold = bypass is None and _sounding(thing)
    return bool(worked or bypass not in (None, _UNTOUCHED) or is_receiver(thing) or untold or not thing.jacks)


def _sounding(thing: Thing) -> bool:
    sounds = any(jack.audio for jack in thing.jacks) and "passive" not in thing.flags
    return not isinstance(thing, Supply) and sounds


def _fits_below(thing: Thing, deck: Deck) -> bool:
    if thing.height_mm is None or deck.clearance_mm is None:
        return False
    return not lacks_below(thing, deck)
