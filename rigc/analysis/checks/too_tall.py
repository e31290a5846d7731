"""Something on the deck is too tall for the lid, or something below it hangs too low.

Why it matters: the lid presses on a switch or a knob; a supply under the deck stands on the floor and carries the board.
What to do: choose a deeper lid or taller legs, lay the thing flatter, or move it. A treadle is counted parked, toe down.
Source: geometry on stated sizes; 10 mm of foam under the lid and 15 mm below (10 for leads, 5 spare) are common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.placement import Outline, Placement
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts import clearance
from rigc.model.deck import Case, Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing

KIND = Kind(
    "D05",
    "too-tall",
    Level.ERROR,
    __doc__,
    "in a case: height ≤ lid − 10 mm; under the deck: height + 15 mm ≤ clearance",
    "geometry on stated sizes; 10 and 15 mm are common practice, no source",
)
_HAIR_MM = 1e-6


def too_tall(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each thing that is too tall, and one for each fact that keeps it from being judged."""
    for case in rig.cases.values():
        yield from _under_lid(rig, placement, case)
    for deck in rig.decks.values():
        hanging = [body for body in placement.outlines.values() if body.under and body.deck == deck.name]
        yield from _under_deck(rig, deck, hanging)


def _under_lid(rig: Rig, placement: Placement, case: Case) -> Iterator[Diagnostic]:
    standing = [body for body in placement.outlines.values() if not body.under]
    if case.lid_mm is None:
        if standing:
            yield KIND.cant_check(
                case.declared,
                f"whether the lid of '{case.name}' closes is not known: its depth is not stated",
                subject=(case.name,),
                help="state the room above the deck as `lid`",
            )
        return
    room = case.lid_mm.value - clearance.LID_FOAM_MM.value
    for body in standing:
        height = _parked(rig, body)
        if height is None:
            yield _no_height(rig, body)
        elif height - room > _HAIR_MM:
            raised = f" on a tier of {body.raised_mm:g} mm" if body.raised_mm else ""
            yield KIND.at(
                rig.places[body.thing].span,
                f"'{body.thing}' stands {height:g} mm tall{raised} and the lid of '{case.name}' leaves {room:g} mm, "
                f"short by {height - room:g} mm",
                subject=(body.thing, case.name),
                label="stands here",
                also=(Label(case.lid_mm.span, f"less {clearance.LID_FOAM_MM.value:g} mm of foam"),),
                numbers=(Number("height", height, "mm"), Number("room", room, "mm")),
                help=f"use a lid of {height + clearance.LID_FOAM_MM.value:g} mm or more",
            )


def _parked(rig: Rig, body: Outline) -> float | None:
    """How high a thing reaches above the plain deck, a treadle parked at the lower end of its travel."""
    thing = rig.things[body.thing]
    if isinstance(thing, Thing) and thing.treadle_mm is not None:
        return body.raised_mm + min(thing.treadle_mm)
    return None if body.height_mm is None else body.raised_mm + body.height_mm


def _under_deck(rig: Rig, deck: Deck, hanging: list[Outline]) -> Iterator[Diagnostic]:
    if not hanging:
        return
    if deck.clearance_mm is None:
        yield KIND.cant_check(
            deck.declared,
            f"whether what hangs under '{deck.name}' clears the floor is not known: its clearance is not stated",
            subject=(deck.name,),
            help="state the room below the deck as `clearance`",
        )
        return
    room, spare = deck.clearance_mm.value, clearance.UNDERSIDE_MM.value
    for body in hanging:
        if body.height_mm is None:
            yield _no_height(rig, body)
        elif body.height_mm + spare - room > _HAIR_MM:
            needed = body.height_mm + spare
            yield KIND.at(
                rig.places[body.thing].span,
                f"'{body.thing}' needs {body.height_mm:g} + {spare:g} = {needed:g} mm under '{deck.name}', "
                f"which has {room:g} mm, short by {needed - room:g} mm",
                subject=(body.thing, deck.name),
                label="hangs here",
                also=(Label(deck.clearance_mm.span, "all the room there is"),),
                numbers=(Number("needed", needed, "mm"), Number("clearance", room, "mm")),
                help=f"raise the deck by {needed - room:g} mm",
            )


def _no_height(rig: Rig, body: Outline) -> Diagnostic:
    return KIND.cant_check(
        rig.places[body.thing].span,
        f"whether '{body.thing}' is too tall is not known: its height is not stated",
        subject=(body.thing,),
        help=f"measure '{body.thing}' and state its `body`",
    )


CHECK = too_tall
