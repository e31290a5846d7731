"""Something on the deck is too tall for the lid or the case, or something below the deck hangs too low.

Three things are compared. Where a case states its `lid`: each thing's height (on a tier, the tier's as well) with the lid
less {clearance.LID_FOAM_MM} of foam. Where a case states its `inside`: the clearance below the deck + the deck's thickness + the height of
what reaches highest with the height inside less {clearance.LID_FOAM_MM} of foam; a deck at an angle is counted low at the front, where its
clearance is, and the rear upper edge of a thing by sine and cosine; of several cases that may be its own the roomiest. Under the deck: each
thing's height + {clearance.UNDERSIDE_MM} with the clearance. A treadle is counted parked, toe down.

Why it matters: the lid presses on a switch or a knob; a supply under the deck stands on the floor and carries the board.
What to do: choose a deeper lid or case or taller legs, lay the thing flatter, or move it.
Source: geometry on stated sizes; {clearance.LID_FOAM_MM} of foam under the lid and {clearance.UNDERSIDE_MM} below (10 for leads, 5 spare) are common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from rigc.analysis.deck.case_height import HeightInCase, height_in_case, parked_mm
from rigc.analysis.deck.foot_beneath import foot_beneath, too_low_mm
from rigc.analysis.deck.placement import Outline, Placement
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import joined
from rigc.facts import clearance
from rigc.model.deck import Case, Deck
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.ways.case_of import cases_for

KIND = Kind(
    "too-tall",
    Level.ERROR,
    __doc__,
    f"in a case: height ≤ lid − {clearance.LID_FOAM_MM}, and clearance + deck + height ≤ inside height − {clearance.LID_FOAM_MM}; under the deck: height + {clearance.UNDERSIDE_MM} "
    "≤ clearance",
    f"geometry on stated sizes; {clearance.LID_FOAM_MM.value} and {clearance.UNDERSIDE_MM} are common practice, no source",
)
_HAIR_MM = 1e-6


def too_tall(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for all that is too tall for a lid, for each thing that hangs too low, and for each fact that keeps one from being judged."""
    for case in rig.cases.values():
        yield from _under_lid(rig, placement, case)
    for deck in rig.decks.values():
        yield from _in_case(rig, deck, [body for body in placement.outlines.values() if body.deck == deck.name])
        hanging = [body for body in placement.outlines.values() if body.under and body.deck == deck.name]
        yield from _under_deck(rig, deck, hanging)


def _under_lid(rig: Rig, placement: Placement, case: Case) -> Iterator[Diagnostic]:
    standing = [
        body for body in placement.outlines.values() if not body.under and case in cases_for(rig, body.deck or "")
    ]
    if case.lid_mm is None:
        if standing and case.inside_mm is None:
            yield KIND.cant_check(
                case.declared,
                f"whether the lid of '{case.name}' closes is not known: its depth is not stated",
                subject=(case.name,),
                help=f"measure the room above the deck and write it in the block of '{case.name}': `lid ___ mm`",
            )
        return
    room = case.lid_mm.value - clearance.LID_FOAM_MM.value
    heights = [(body, parked_mm(rig, body)) for body in standing]
    yield from (_no_height(rig, body) for body, height in heights if height is None)
    over = [(body, height) for body, height in heights if height is not None and height - room > _HAIR_MM]
    if over:
        yield _above_lid(rig, case, case.lid_mm, room, over)


def _above_lid(rig: Rig, case: Case, lid: Quantity, room: float, over: list[tuple[Outline, float]]) -> Diagnostic:
    """One finding for all that stands too tall: the lid is one, and the tallest tells which it has to be."""
    tallest, most = max(over, key=lambda each: each[1])
    sizes = [
        (body.thing, f"{height:g} mm", f" on a tier of {body.raised_mm:g} mm" if body.raised_mm else "")
        for body, height in over
    ]
    stand = (
        f"'{sizes[0][0]}' stands {sizes[0][1]} tall{sizes[0][2]}"
        if len(over) == 1
        else joined(f"'{thing}' ({size}{raised})" for thing, size, raised in sizes) + " stand too tall"
    )
    return KIND.at(
        rig.places[tallest.thing].span,
        f"{stand} and the lid of '{case.name}' leaves {room:g} mm, short by {most - room:g} mm",
        subject=(*(body.thing for body, _ in over), case.name),
        label="stands here" if len(over) == 1 else "the tallest",
        also=(Label(lid.span, f"less {clearance.LID_FOAM_MM.value:g} mm of foam"),),
        numbers=(Number("height", most, "mm"), Number("room", room, "mm")),
        help=f"use a lid of {most + clearance.LID_FOAM_MM.value:g} mm or more",
    )


def _in_case(rig: Rig, deck: Deck, bodies: list[Outline]) -> Iterator[Diagnostic]:
    """A deck with what stands on it, against the height inside the roomiest case."""
    standing = [body for body in bodies if not body.under]
    inside, case = max(
        ((case.inside_mm[2], case) for case in cases_for(rig, deck.name) if case.inside_mm is not None),
        key=lambda each: each[0],
        default=(0.0, None),
    )
    if case is None or not bodies:
        return
    unknown = [
        name for name, fact in (("clearance", deck.clearance_mm), ("thickness", deck.thickness_mm)) if fact is None
    ]
    if unknown:
        tallest = max(standing, key=lambda body: parked_mm(rig, body) or 0.0, default=None)
        if tallest is not None and deck.angle_deg is None:
            known = sum(fact.value for fact in (deck.clearance_mm, deck.thickness_mm) if fact is not None)
            least = known + (parked_mm(rig, tallest) or 0.0)
            if least - (inside - clearance.LID_FOAM_MM.value) > _HAIR_MM:
                yield _too_high_already(rig, deck, case, tallest, least, unknown)
                return
        yield KIND.cant_check(
            deck.declared,
            f"whether '{deck.name}' goes into the height of '{case.name}' is not known: its "
            f"{' and '.join(unknown)} {'is' if len(unknown) == 1 else 'are'} not stated",
            subject=(deck.name, case.name),
            help=how_to_state(f"the {unknown[0]} of deck '{deck.name}'"),
        )
        return
    heights = [each for body in standing if (each := height_in_case(rig, deck, body)) is not None]
    highest = max(heights, key=lambda each: each.top_mm, default=None)
    room = inside - clearance.LID_FOAM_MM.value
    if highest is not None and highest.top_mm - room > _HAIR_MM:
        yield _too_high(rig, deck, case, highest, room)
    if case.lid_mm is None:
        yield from (_no_height(rig, body) for body in standing if parked_mm(rig, body) is None)


def _too_high_already(
    rig: Rig, deck: Deck, case: Case, tallest: Outline, least: float, unknown: list[str]
) -> Diagnostic:
    """Too tall by what is known, whatever the rest is."""
    assert case.inside_mm is not None
    room = case.inside_mm[2] - clearance.LID_FOAM_MM.value
    return KIND.at(
        rig.places[tallest.thing].span,
        f"with '{tallest.thing}' on it '{deck.name}' stands {short(least)} mm tall without its {' and '.join(unknown)}, not stated, and "
        f"the inside of '{case.name}' leaves {room:g} mm, short by {short(least - room)} mm at least",
        subject=(deck.name, case.name),
        label="reaches highest",
        also=(Label(case.declared, f"its inside less {clearance.LID_FOAM_MM.value:g} mm of foam"),),
        numbers=(Number("height", round(least, 2), "mm"), Number("room", room, "mm")),
        help="choose a case that is higher inside by more than that",
    )


def _too_high(rig: Rig, deck: Deck, case: Case, highest: HeightInCase, room: float) -> Diagnostic:
    tilt = f" + {short(highest.tilt_mm)} of tilt" if highest.tilt_mm else ""
    over = highest.top_mm - room
    return KIND.at(
        rig.places[highest.thing].span,
        f"with '{highest.thing}' on it '{deck.name}' stands {highest.clearance_mm:g} + {highest.thickness_mm:g} + "
        f"{highest.height_mm:g}{tilt} = {short(highest.top_mm)} mm tall and the inside of '{case.name}' leaves {room:g} mm, "
        f"short by {short(over)} mm",
        subject=(deck.name, case.name),
        label="reaches highest",
        also=(Label(case.declared, f"its inside less {clearance.LID_FOAM_MM.value:g} mm of foam"),),
        numbers=(Number("height", round(highest.top_mm, 2), "mm"), Number("room", room, "mm")),
        help=f"choose a case of {ceil(highest.top_mm + clearance.LID_FOAM_MM.value - _HAIR_MM)} mm or more inside in height, or lower legs",
    )


def _under_deck(rig: Rig, deck: Deck, hanging: list[Outline]) -> Iterator[Diagnostic]:
    if not hanging:
        return
    if deck.clearance_mm is None:
        yield KIND.cant_check(
            deck.declared,
            f"whether what hangs under '{deck.name}' clears the floor is not known: its clearance is not stated",
            subject=(deck.name,),
            help=how_to_state(f"the clearance of deck '{deck.name}'"),
        )
        return
    room, spare = deck.clearance_mm.value, clearance.UNDERSIDE_MM.value
    out_of_reach = foot_beneath(rig)
    for body in hanging:
        if body.height_mm is None:
            yield _no_height(rig, body)
        elif (over := too_low_mm(rig, body)) is not None:
            needed, foot = body.height_mm + spare, out_of_reach.get(body.thing)
            yield KIND.at(
                rig.places[body.thing].span,
                f"'{body.thing}' needs {body.height_mm:g} + {spare:g} = {needed:g} mm under '{deck.name}', "
                f"which has {room:g} mm, short by {over:g} mm"
                + (f"; and no foot comes to its {foot} there" if foot else ""),
                subject=(body.thing, deck.name),
                label="hangs here",
                also=(Label(deck.clearance_mm.span, "all the room there is"),),
                numbers=(Number("needed", needed, "mm"), Number("clearance", room, "mm")),
                help=f"stand it on the deck: write `{body.thing} at X, Y mm`"
                if foot
                else f"raise the deck by {over:g} mm",
            )


def _no_height(rig: Rig, body: Outline) -> Diagnostic:
    return KIND.cant_check(
        rig.places[body.thing].span,
        f"whether '{body.thing}' is too tall is not known: its height is not stated",
        subject=(body.thing,),
        help=how_to_state(f"the body of '{body.thing}'"),
    )


CHECK = too_tall
