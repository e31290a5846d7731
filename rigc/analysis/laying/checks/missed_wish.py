"""A wish for a place is not met in full by the places that were chosen.

Why it matters: nothing that is in the way is made up for by a wish, so what can't be had is left out; the player should know before
the deck is drilled.
What to do: drop the wish, or move what stands in its way, which frees the place that it asks for.
Source: geometry on chosen places; the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, hypot

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.analysis.deck.unplaced import unplaced
from rigc.analysis.laying.choices.standing import needs_top
from rigc.analysis.laying.wishes.contradictions import contradictions
from rigc.analysis.laying.wishes.missed_wishes import MissedWish, MissedWishes
from rigc.analysis.laying.wishes.wish_words import by_how_much, wished
from rigc.analysis.laying.wishes.wishes_of_rig import lacks_below
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.wording import joined, listed
from rigc.facts import clearance
from rigc.model.deck import Deck, Hint
from rigc.model.rig import Rig
from rigc.model.things import Thing, Unit

KIND = Kind(
    "missed-wish",
    Level.REMARK,
    __doc__,
    "chosen places meet the wishes for them",
    "geometry on chosen places; the language reference, grammar/README.md",
)


def missed_wish(rig: Rig, missed: MissedWishes) -> Iterator[Diagnostic]:
    """One finding for each wish that is missed for another reason than one that contradicts it; can't-checks for those about switches or
    knobs of what states none."""
    told = {hint for each in contradictions(rig.hints) for hint in each}
    crowded = any(thing.width_mm is not None and thing.depth_mm is not None for thing in unplaced(rig))
    for each in missed.all:
        hint, far = each.wish.hint, each.wish.missed
        if hint in told or each.wish.deck is None:
            continue
        yield KIND.at(
            hint.span,
            f"{wished(hint)}; {by_how_much(hint, each.wish.deck, far)}: {_against(rig, each)}",
            subject=hint.named,
            label="this wish is not met in full",
            numbers=(Number("missed", far / 10, "mm"),),
            mends=()
            if crowded  # to try a mend is to lay the board anew, and what has no room will have none
            else (
                *_less(hint, far),
                *_more(each),
                Mend("drop the wish", (Delete(hint.span),)),
                *_freed(rig, each.in_the_way),
            ),
            help=_raised(rig, each) or _higher(each) or ("make room for what has no place first" if crowded else ""),
        )
    for hint in rig.hints:
        if hint.kind in _ABOUT:
            yield from _about_nothing(rig, hint, *_ABOUT[hint.kind])


_ABOUT = {
    "clear": ("switches", "switch", "switch at ___, ___ mm"),
    "knobs_free": ("knobs", "knob", 'knob "___" at ___, ___ mm'),
}


def _about_nothing(rig: Rig, hint: Hint, field: str, what: str, line: str) -> Iterator[Diagnostic]:
    name = hint.things[0]
    states = (
        f"measure each {what} and write it into the block of '{name}': {line}; or "
        if isinstance(rig.things[name], Unit)
        else ""
    )
    if not getattr(rig.things[name], field):
        yield KIND.cant_check(
            hint.span,
            f"{wished(hint)}; '{name}' states no {what}, so whether that is met can't be checked",
            subject=hint.named,
            help=f"{states}drop the wish",
        )


def _raised(rig: Rig, missed: MissedWish) -> str:
    """How much higher the deck must stand for what is wished beneath it."""
    thing, deck = rig.things[missed.wish.hint.things[0]], missed.wish.deck
    if missed.in_the_way or missed.wish.hint.word != "beneath" or deck is None or not isinstance(thing, Thing):
        return ""
    if _has_switch(thing):
        return ""
    lacks = lacks_below(thing, deck)
    return f"raise '{deck.name}' by {lacks / 10:g} mm" if lacks else ""


def _has_switch(thing: Thing) -> bool:
    """Whether it is stepped on, so that a higher deck would not make it one to hang."""
    return bool(thing.switches or thing.treadle_mm is not None) and not worked_by_hand(thing)


def _higher(missed: MissedWish) -> str:
    """How much room there must be in the case for what would be too tall."""
    if missed.too_tall is None:
        return ""
    _, lacks = missed.too_tall
    least = lacks.height_mm + clearance.LID_FOAM_MM.value
    if lacks.by_lid:
        return f"use a lid of {short(least)} mm or more"
    return f"choose a case of {ceil(round(least, 2))} mm or more inside in height"


def _against(rig: Rig, missed: MissedWish) -> str:
    hint, way, kept, against = missed.wish.hint, missed.in_the_way, missed.kept_free, missed.against
    if missed.too_tall is not None:
        name, lacks = missed.too_tall
        high, left = short(lacks.height_mm), short(lacks.room_mm)
        return (
            f"'{name}' would stand {high} mm tall there, and the {'lid' if lacks.by_lid else 'inside'} of '{lacks.case}' leaves "
            f"{left} mm, short by {short(lacks.height_mm - lacks.room_mm)} mm"
        )
    if way or kept:
        told = [f"{listed(way)} {'stands' if len(way) == 1 else 'stand'} in its way"] if way else []
        told += [f"{joined(kept)} {'lies' if len(kept) == 1 else 'lie'} there"] if kept else []
        return joined(told)
    if missed.least_gap is not None:
        return f"{listed(hint.named)} need {missed.least_gap / 10:g} mm between them for plugs, feet and hands"
    if against:
        return f"that goes against the wish that {joined(_said(each) for each in against)}"
    thing = rig.things[hint.things[0]]
    if hint.kind == "jacks_look" and isinstance(thing, Thing) and needs_top(thing):
        return "what a foot works is not turned away from the player"
    deck = missed.wish.deck
    if hint.word == "beneath" and deck is not None and isinstance(thing, Thing) and lacks_below(thing, deck):
        if _has_switch(thing):
            return f"no foot would come to '{thing.name}' there, and it is {short(lacks_below(thing, deck) / 10)} mm too tall for it"
        assert thing.height_mm is not None and deck.clearance_mm is not None
        height, spare = thing.height_mm.value, clearance.UNDERSIDE_MM.value
        return f"'{thing.name}' needs {height:g} + {spare:g} = {height + spare:g} mm there, and there are {deck.clearance_mm.value:g} mm"
    tier = next((each for each in deck.tiers if each.name in hint.others), None) if deck is not None else None
    if tier is not None and isinstance(thing, Thing) and thing.depth_mm is not None and needs_top(thing):
        deep, room = thing.depth_mm.value, tier.rear_mm - tier.front_mm
        if deep > room:
            return f"'{thing.name}' is {deep:g} mm deep, and '{tier.name}' {room:g} mm"
    if (
        deck is not None
        and hint.kind == "row"
        and hint.word == "rear"
        and isinstance(thing, Thing)
        and needs_top(thing)
    ):
        assert deck.depth_mm is not None
        behind = deck.depth_mm.value * 2 / 3
        if thing.depth_mm is not None and thing.depth_mm.value > behind:
            return f"'{thing.name}' is {thing.depth_mm.value:g} mm deep, and what is behind the front third of '{deck.name}' {short(behind)} mm"
    if deck is not None and hint.amount_mm is not None:
        most = _farthest(rig, hint, deck)
        if hint.kind == "beside" and hint.amount_mm > most:
            return f"on '{deck.name}' they can be {short(most)} mm apart at most"
        if hint.kind != "beside" and hint.amount_mm >= most:
            return f"no two things on '{deck.name}' can be {short(most)} mm apart"
    chosen = [name for name in hint.named if rig.places[name].chosen]
    if missed.somewhere or len(chosen) > 1:  # one thing alone can't meet what is wished of several
        return f"no layout that was found has {'them' if hint.things[1:] else 'it'} there; more --effort may"
    return "no place on the deck was found that would meet it"


def _farthest(rig: Rig, hint: Hint, deck: Deck) -> float:
    """What no gap or distance on a deck reaches, in mm: for a gap its width or its depth less what both things take up of it, however they
    are turned; its diagonal for the rest."""
    assert deck.width_mm is not None and deck.depth_mm is not None
    width, depth = deck.width_mm.value, deck.depth_mm.value
    if hint.kind != "beside":
        return hypot(width, depth)
    along = width if hint.word in ("left", "right") else depth
    return along - sum(_least_side(rig.things[name]) for name in hint.named)


def _least_side(thing: object) -> float:
    sides = (thing.width_mm, thing.depth_mm) if isinstance(thing, Thing) else ()
    return min((each.value for each in sides if each is not None), default=0.0)


def _said(hint: Hint) -> str:
    return f"{hint.subjects} {'stand' if hint.things[1:] else 'stands'} {hint.words}"


def _less(hint: Hint, far: int) -> tuple[Mend, ...]:
    """As much as there is, where a distance is asked for."""
    left = None if hint.amount_mm is None else hint.amount_mm - far / 10
    if hint.kind not in ("clear", "away") or hint.amount_at is None or left is None or left <= 0 or hint.named[2:]:
        return ()
    return (Mend(f"ask for {left:g} mm", (Replace(hint.amount_at, f"{left:g} mm"),)),)


def _more(each: MissedWish) -> tuple[Mend, ...]:
    """The gap that two things need, where a lesser one is asked for."""
    asked, least = each.wish.hint.amount_at, each.least_gap
    if asked is None or least is None:
        return ()
    return (Mend(f"ask for {least / 10:g} mm", (Replace(asked, f"{least / 10:g} mm"),)),)


def _freed(rig: Rig, way: tuple[str, ...]) -> tuple[Mend, ...]:
    """What is in the way and has a stated place is given a chosen one."""
    return tuple(
        Mend(f"delete the place of '{name}', and it is chosen beside the wish", (Delete(rig.places[name].span),))
        for name in way
        if not rig.places[name].chosen
    )


CHECK = missed_wish
