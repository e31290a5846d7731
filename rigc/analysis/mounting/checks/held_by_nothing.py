"""A thing hangs under the deck, and nothing is said to hold it there.

Why it matters: strips hold on the deck's top, and from its underside only where rails are taped on both faces. Nobody drills for a
bracket that no sheet asks for, and what falls pulls its leads along.
What to do: say what holds it: `brackets`, `bolted` or `screwed`; or tape the rails on both faces. Nothing is told of a rig that does not say yet
what holds anything.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.foot_beneath import foot_beneath
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import listed
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.model.things import Thing

KIND = Kind(
    "held-by-nothing",
    Level.WARNING,
    __doc__,
    "what hangs under a deck has brackets, bolts, screws, or strip on tape",
    "common practice, no source",
)


def held_by_nothing(rig: Rig, strips: MountingStrip) -> Iterator[Diagnostic]:
    """One finding for all that hang under one deck; what a foot works hangs there by mistake, which is told."""
    if rig.mounting.all_with is None and not rig.mounting.strips and not rig.mounting.fixings:
        return
    stripped = {each.thing for each in strips.units} | {each.thing for each in strips.unknown}
    bridged = {name for name, _ in rig.mounting.bridged}
    loose: dict[str, list[Place]] = {}
    mistaken = foot_beneath(rig)
    for place in rig.places.values():
        held = place.thing in stripped or place.thing in bridged or rig.mounting.fixing_of(place.thing) is not None
        if place.under and not held and place.thing not in mistaken and isinstance(rig.things.get(place.thing), Thing):
            deck = rig.decks.get(place.deck or "", rig.deck)
            loose.setdefault(deck.name if deck is not None else "", []).append(place)
    for name, places in loose.items():
        yield _told(rig, name, places)


def _told(rig: Rig, deck: str, places: list[Place]) -> Diagnostic:
    names = [place.thing for place in places]
    own = [name for name, _ in rig.mounting.strips if name in names]
    tape = f"; strip finds no tape beneath '{deck}'" if own and deck else ""
    return KIND.at(
        places[0].span,
        f"{listed(names)} {'hangs' if len(names) == 1 else 'hang'} under the deck, and nothing is said to hold "
        f"{'it' if len(names) == 1 else 'them'}{tape}",
        subject=tuple(names),
        label="hangs here",
        also=tuple(Label(place.span, "and here") for place in places[1:]),
        mends=(
            Mend(
                f"put {'it' if len(names) == 1 else 'them'} in brackets: `{', '.join(names)} brackets`",
                (AddTo("mounting", "", f"{', '.join(names)} brackets"),),
            ),
        ),
        help="write `bolted` or `screwed`, if that is how it is held",
    )


CHECK = held_by_nothing
