"""Two things take the same room, one reaches over an edge or into a part that is kept free, or the deck is too large for its case.

Why it matters: the board cannot be built as planned.
What to do: move one of them by the figure that is told. Bodies may touch; to lift a unit out, leave {foot.LIFT_OUT_MM} beside it.
Source: geometry on stated sizes.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.body_clash import BodyClash, Overlap
from rigc.analysis.deck.crowded_places import crowded_places, own_place
from rigc.analysis.deck.heaps import Heap, heaps
from rigc.analysis.deck.kept_free import KeptFree, kept_free
from rigc.analysis.deck.meant_places import (
    a_nought_less,
    deck_turned,
    in_a_larger_unit,
    in_mm,
    interchanged_there,
    without_minus,
)
from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import listed, listed_few
from rigc.model.deck import Deck, Place
from rigc.model.geometry.polygon import reach
from rigc.model.rig import Rig
from rigc.model.ways.case_of import cases_for

KIND = Kind(
    "bodies-overlap",
    Level.ERROR,
    __doc__,
    "no footprint overlaps another on its side of the deck, leaves the deck or its tier, or reaches into a keep-out, a reserved "
    "room, the room for the heel or another tier; the deck goes into the case",
    "geometry on stated sizes",
)
_HAIR_MM = 1e-6
_FEW = 2


def bodies_overlap(rig: Rig, placement: Placement, clash: BodyClash, finder: PlaceFinder) -> Iterator[Diagnostic]:
    """One finding for each two things that overlap, or for all that do where that has one cause, each thing that leaves its deck or tier, each part kept free that is
    entered, each deck that goes into no case."""
    bodies = tuple(placement.outlines.values())
    in_heel = {name: _in_heel(deck, bodies) for name, deck in rig.decks.items()}
    on_top = {name: [body for body in bodies if body.deck == name and not body.under] for name in rig.decks}
    crowded = {
        name: found for name, found in in_heel.items() if len(found) > _FEW or len(on_top[name]) == len(found) > 1
    }
    for name, found_there in crowded.items():
        yield _too_much_heel(rig.decks[name], found_there)
    entered = {body.thing: _entered(rig, body) for body in bodies}
    overfull = _overfull(bodies, entered)
    for (name, _), entering in overfull.items():
        yield _too_much_kept(rig, rig.decks[name], entering)
    crowds = crowded_places(rig)
    yield from map(_crowd, crowds)
    for heap in heaps(clash.overlaps):
        if heap.has_one_cause:
            yield _heap(rig, heap, finder)
        else:
            yield from (finder.moving(_overlap(rig, each), each.other.thing, each.one.thing) for each in heap.overlaps)
    turned_decks = [each for name in rig.decks for each in _turned_deck(rig, name, bodies, clash)]
    yield from turned_decks
    within = {each.subject[0] for each in turned_decks}
    for body in bodies:
        deck = rig.decks.get(body.deck or "")
        if deck is not None:
            beyond = {} if deck.name in within else clash.beyond.get(body.thing, {})
            found = [*_off_deck(rig, body, deck, beyond), *_off_tier(rig, body, deck)]
            found += [
                _reaches_into(rig, body, deck, kept)
                for kept in entered[body.thing]
                if (kept.key != "heel" or deck.name not in crowded) and (deck.name, kept.key) not in overfull
            ]
            turned = _meant(rig, body, deck) if body.thing in clash.beyond else ()
            yield from (each if each.mends else _moved(finder, each, body.thing, turned) for each in found)
    yield from _too_large(rig, {body.deck for body in bodies})
    yield from _unknown(rig, placement, {place.thing for places in crowds for place in places})


def _meant(rig: Rig, body: Outline, deck: Deck) -> tuple[Mend, ...]:
    return interchanged_there(rig, body, deck) or a_nought_less(rig, body, deck)


def _moved(finder: PlaceFinder, found: Diagnostic, thing: str, turned: tuple[Mend, ...]) -> Diagnostic:
    """With where it may go; before that what was more likely meant."""
    moved = finder.moving(found, thing)
    told: Diagnostic = moved.replace(mends=(*turned, *moved.mends))
    return told


def _in_heel(deck: Deck, bodies: tuple[Outline, ...]) -> list[Outline]:
    """What stands in the room for the heel."""
    if deck.heel_mm is None:
        return []
    free = deck.heel_mm.value - _HAIR_MM
    return [body for body in bodies if body.deck == deck.name and not body.under and body.y_mm < free]


def _too_much_heel(deck: Deck, bodies: list[Outline]) -> Diagnostic:
    """One finding for all of many: then the room is more likely wrong than each of the places."""
    assert deck.heel_mm is not None
    front = min(body.y_mm for body in bodies)
    names = [body.thing for body in bodies]
    return KIND.at(
        deck.heel_mm.span,
        f"{len(names)} things reach into the {deck.heel_mm.typed} that stay free for the heel, the foremost at {front:g} mm: "
        f"{listed(names)}",
        subject=(deck.name, "heel", *names),
        label="stay free",
        numbers=(Number("heel", deck.heel_mm.value, "mm"), Number("foremost", front, "mm")),
        help=f"measure the room for the heel again: {front:g} mm are free; or move what stands in it to the rear",
    )


def _entered(rig: Rig, body: Outline) -> list[KeptFree]:
    """The parts kept free that a thing reaches into."""
    deck = rig.decks.get(body.deck or "")
    return [] if deck is None else [each for each in kept_free(rig, deck, body) if _into(body, each)[2] > _HAIR_MM]


def _overfull(
    bodies: tuple[Outline, ...], entered: dict[str, list[KeptFree]]
) -> dict[tuple[str, str], list[tuple[Outline, KeptFree]]]:
    """Keep-outs and reserved rooms that more than a few things reach into, by deck and key."""
    found: dict[tuple[str, str], list[tuple[Outline, KeptFree]]] = {}
    for body in bodies:
        for kept in (each for each in entered[body.thing] if each.is_area):
            found.setdefault((body.deck or "", kept.key), []).append((body, kept))
    return {key: entering for key, entering in found.items() if len(entering) > _FEW}


def _too_much_kept(rig: Rig, deck: Deck, entering: list[tuple[Outline, KeptFree]]) -> Diagnostic:
    """One finding for all of many: then the room is more likely wrong than each of the places."""
    kept, names = entering[0][1], [body.thing for body, _ in entering]
    room = kept.room
    return KIND.at(
        kept.span,
        f"{len(names)} things reach into {kept.named}, {room.width_mm:g} x {room.depth_mm:g} mm at {room.x_mm:g}, {room.y_mm:g} mm: "
        f"{listed(names)}",
        subject=(deck.name, kept.key, *names),
        label="stays free",
        also=tuple(Label(rig.places[name].span, "stands here") for name in names[:_FEW]),
        numbers=(Number("across", room.width_mm, "mm"), Number("along", room.depth_mm, "mm")),
        help="measure it again, its size and its place; or move what stands in it",
    )


def _overlap(rig: Rig, found: Overlap) -> Diagnostic:
    one, other, across, along, into = found.one, found.other, found.across_mm, found.along_mm, found.into_mm
    askew = bool(one.askew or other.askew)
    where = " under the deck" if one.under else ""
    figures = f"{short(into)} mm" if askew else f"{across:g} x {along:g} mm"
    sides = (Number("across", across, "mm"), Number("along", along, "mm"))
    return KIND.at(
        rig.places[other.thing].span,
        f"'{one.thing}' and '{other.thing}' overlap by {figures}{where}",
        subject=(other.thing, one.thing),
        label=f"'{other.thing}' stands here",
        also=(Label(rig.places[one.thing].span, f"'{one.thing}' stands here"),),
        numbers=(Number("into", into, "mm"),) if askew else sides,
    )


def _crowd(places: tuple[Place, ...]) -> Diagnostic:
    """One finding for all that have one place."""
    names, first = [place.thing for place in places], places[0]
    return KIND.at(
        places[1].span,
        f"{len(names)} things {_stand(first.under)} at one place, {first.x_mm:g}, {first.y_mm:g} mm: {listed_few(names)}",
        subject=tuple(names),
        label="the second of them",
        also=(Label(first.span, "the first"),),
        numbers=(Number("things", len(names), ""),),
        help="write where each of them stands; what has no line in the place block is given a place",
        asks_for=tuple(map(own_place, names)),
    )


def _stand(under: bool) -> str:
    return "hang under the deck" if under else "stand"


def _heap(rig: Rig, heap: Heap, finder: PlaceFinder) -> Diagnostic:
    """One finding for many overlaps: one thing is in the way of all others, or they lie in a heap."""
    names, hub = [body.thing for body in heap.things], heap.hub
    if hub is not None:
        others = [name for name in names if name != hub.thing]
        size = f"{hub.width_mm:g} x {hub.depth_mm:g} mm"
        return finder.moving(
            KIND.at(
                rig.places[hub.thing].span,
                f"'{hub.thing}', {size}, takes the room of {len(others)} things: {listed_few(others)}",
                subject=(hub.thing, *others),
                label=f"'{hub.thing}' stands here" if not hub.under else f"'{hub.thing}' hangs here",
                numbers=(
                    Number("width", hub.width_mm, "mm"),
                    Number("depth", hub.depth_mm, "mm"),
                    Number("things", len(others), ""),
                ),
                help=f"see whether its body is {size}",
            ),
            hub.thing,
        )
    worst = max(heap.overlaps, key=lambda each: each.into_mm)
    return KIND.at(
        rig.places[worst.other.thing].span,
        f"{len(names)} things {_stand(heap.things[0].under)} in each other's room: {listed_few(names)}; '{worst.one.thing}' and '{worst.other.thing}' overlap "
        f"by {short(worst.across_mm)} x {short(worst.along_mm)} mm",
        subject=tuple(names),
        label=f"'{worst.other.thing}' is one of them",
        also=(Label(rig.places[worst.one.thing].span, f"and '{worst.one.thing}' is"),),
        numbers=(
            Number("things", len(names), ""),
            Number("pairs", len(heap.overlaps), ""),
            Number("into", worst.into_mm, "mm"),
        ),
        mends=in_a_larger_unit(rig, heap.things),
        help="see whether their places and bodies are in mm; what has no line in the place block is given a place",
    )


def _turned_deck(rig: Rig, name: str, bodies: tuple[Outline, ...], clash: BodyClash) -> Iterator[Diagnostic]:
    """One finding for all of many that leave a deck, and would not if its sides were exchanged."""
    deck, here = rig.decks[name], [body for body in bodies if body.deck == name]
    off = [body.thing for body in here if body.thing in clash.beyond]
    mends = deck_turned(deck, here) if len(off) >= _FEW else ()
    if mends and deck.width_mm is not None and deck.depth_mm is not None:
        yield KIND.at(
            deck.width_mm.span,
            f"{len(off)} things leave '{name}', {deck.width_mm.value:g} x {deck.depth_mm.value:g} mm, and none if its width and depth are "
            f"interchanged: {listed_few(off)}",
            subject=(name, *off),
            label="width x depth",
            numbers=(Number("things", len(off), ""),),
            mends=mends,
            help="measure it again, and where they stand",
        )


def _off_deck(rig: Rig, body: Outline, deck: Deck, beyond: dict[str, float]) -> Iterator[Diagnostic]:
    if beyond and deck.width_mm is not None and deck.depth_mm is not None:
        width, depth = deck.width_mm.value, deck.depth_mm.value
        yield KIND.at(
            rig.places[body.thing].span,
            f"'{body.thing}' overhangs "
            + " and ".join(f"the {side} edge by {short(over)} mm" for side, over in beyond.items()),
            subject=(body.thing, deck.name),
            label="stands here" if not body.under else "hangs here",
            also=(Label(deck.width_mm.span, f"the deck is {width:g} x {depth:g} mm"),),
            numbers=tuple(Number(side, over, "mm") for side, over in beyond.items()),
            mends=in_mm(rig, body, deck) or without_minus(rig, body, deck),
            help=_too_wide(body, width, depth),
        )


def _too_wide(body: Outline, width: float, depth: float) -> str:
    """What helps where no place can: the body is larger than the deck."""
    larger = body.width_mm > width or body.depth_mm > depth
    return f"'{body.thing}' is larger than the deck: choose a larger deck, or turn it" if larger else ""


def _off_tier(rig: Rig, body: Outline, deck: Deck) -> Iterator[Diagnostic]:
    tier = next((each for each in deck.tiers if each.name == rig.places[body.thing].tier), None)
    if tier is None:
        return
    sides = {"front": tier.front_mm - body.y_mm, "rear": body.area.rear_mm - tier.rear_mm}
    for side, over in sides.items():
        if over > _HAIR_MM:
            yield KIND.at(
                rig.places[body.thing].span,
                f"'{body.thing}' reaches {short(over)} mm over the {side} edge of the tier '{tier.name}'",
                subject=(body.thing, deck.name, tier.name),
                label="stands here",
                also=(Label(tier.span, f"{tier.rear_mm - tier.front_mm:g} mm deep"),),
                numbers=(Number(side, over, "mm"),),
            )


def _too_large(rig: Rig, used: set[str | None]) -> Iterator[Diagnostic]:
    """Decks that don't go into their case, or into none of those that may be theirs, whichever way round."""
    for deck in rig.decks.values():
        cases = [(case, case.inside_mm) for case in cases_for(rig, deck.name) if case.inside_mm is not None]
        if not cases or deck.name not in used or deck.width_mm is None or deck.depth_mm is None:
            continue
        short, long = sorted((deck.width_mm.value, deck.depth_mm.value))
        over, case = min(
            ((max(long - max(inside[:2]), short - min(inside[:2])), case) for case, inside in cases),
            key=lambda each: each[0],
        )
        if over > _HAIR_MM:
            yield KIND.at(
                deck.width_mm.span,
                f"'{deck.name}' is {deck.width_mm.value:g} x {deck.depth_mm.value:g} mm, {over:g} mm too large for the "
                f"inside of '{case.name}'",
                subject=(deck.name, case.name),
                label="this large",
                also=(Label(case.declared, "the case"),),
                numbers=(Number("over", over, "mm"),),
                help=f"choose a case that is {over:g} mm larger inside, or a smaller deck",
            )


def _reaches_into(rig: Rig, body: Outline, deck: Deck, kept: KeptFree) -> Diagnostic:
    across, along, into = _into(body, kept)
    figures = f"{short(into)} mm" if body.askew else f"{across:g} x {along:g} mm"
    return KIND.at(
        rig.places[body.thing].span,
        f"'{body.thing}' reaches {figures} into {kept.named}",
        subject=(body.thing, deck.name, kept.key),
        label="stands here",
        also=(Label(kept.span, kept.why),),
        numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
    )


def _into(body: Outline, kept: KeptFree) -> tuple[float, float, float]:
    """How far a thing reaches into a part that is kept free, in mm: across, along, and in all."""
    across, along = body.area.overlap(kept.room)
    return across, along, reach(body.corners, kept.room.corners) if body.askew else min(across, along)


def _unknown(rig: Rig, placement: Placement, crowded: set[str]) -> Iterator[Diagnostic]:
    for place in rig.places.values():
        if placement.outline(place.thing) is None and place.thing not in crowded:
            yield KIND.cant_check(
                place.span,
                f"whether '{place.thing}' has room is not known: its width and depth are not stated",
                subject=(place.thing,),
                help=how_to_state(f"the body of '{place.thing}'"),
                asks_for=(f"the body of '{place.thing}'",),
            )
    for deck in rig.decks.values():
        if deck.width_mm is None and any(body.deck == deck.name for body in placement.outlines.values()):
            yield KIND.cant_check(
                deck.declared,
                f"whether things leave '{deck.name}' is not known: its size is not stated",
                subject=(deck.name,),
                help=how_to_state(f"the size of deck '{deck.name}'"),
                asks_for=(f"the size of deck '{deck.name}'",),
            )


CHECK = bodies_overlap
