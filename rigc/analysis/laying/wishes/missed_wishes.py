"""A rig with chosen places -> which wishes these miss, and what stands where they would be met."""

from __future__ import annotations

from rigc.analysis.laying.room_in_case import TooTall
from rigc.analysis.laying.wishes.place_wishes import PlaceWish, PlaceWishes
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Hint
from rigc.model.rig import Rig
from rigc.record import Record


class MissedWish(Record):
    """A wish that is missed though some of its things have chosen places. `somewhere`: moving one of these would meet it, and then these
    things would be `in_the_way`, and the wishes `against` it would be missed by more; or its case would be too low for it there
    (`too_tall`), or part of the deck there is `kept_free`, in words. `least_gap`: two things can't stand nearer beside each other, in
    tenths of a millimetre, where a lesser gap is asked for."""

    wish: PlaceWish
    somewhere: bool
    in_the_way: tuple[str, ...] = ()
    against: tuple[Hint, ...] = ()
    too_tall: tuple[str, TooTall] | None = None
    kept_free: tuple[str, ...] = ()
    least_gap: int | None = None


class MissedWishes(Record):
    """All of them, in the order of the source."""

    all: tuple[MissedWish, ...]


def missed_wishes(rig: Rig, leads: Leads, wishes: PlaceWishes) -> MissedWishes:
    """Looks for the reasons of those alone that are missed."""
    open_ones = [
        each for each in wishes.all if each.missed and any(rig.places[name].chosen for name in each.hint.named)
    ]
    if not open_ones:
        return MissedWishes(())
    from rigc.analysis.laying.wishes.why_missed import why_missed  # lays the deck, which few rigs need

    decks = {each.deck.name: each.deck for each in open_ones if each.deck is not None}
    found = {hint: why for deck in decks.values() for hint, why in why_missed(rig, deck, leads, open_ones).items()}
    return MissedWishes(tuple(found[each.hint] for each in open_ones))


COMPUTE = missed_wishes
