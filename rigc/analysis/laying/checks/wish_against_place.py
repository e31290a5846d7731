"""A wish for a place is not met by the places that the source itself states.

Why it matters: what is stated is kept, so the wish does nothing; whoever reads it takes the board for another one.
What to do: delete the one that is no longer meant, the wish or the place.
Source: geometry on stated places; the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.wishes.place_wishes import PlaceWishes
from rigc.analysis.laying.wishes.wish_words import by_how_much, wished
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.deck import Hint, Place
from rigc.model.rig import Rig

KIND = Kind(
    "wish-against-place",
    Level.REMARK,
    __doc__,
    "stated places meet the wishes for them",
    "geometry on stated places; the language reference, grammar/README.md",
)


def wish_against_place(rig: Rig, wishes: PlaceWishes) -> Iterator[Diagnostic]:
    """One finding for each wish that leaves nothing to choose and is not met. What has no place is chosen one on one deck alone."""
    for wish in wishes.all:
        places = [rig.places[name] for name in wish.hint.named]
        stated = [place for place in places if not place.chosen]
        if wish.deck is None and stated:
            by = "by the stated places" if len(stated) == len(places) else "one of them is stated, and"
            yield _told(wish.hint, stated, f"{by} they stand on two decks")
        elif wish.missed and wish.deck is not None and len(stated) == len(places):
            by = "its stated place" if len(places) == 1 else "the stated places"
            yield _told(wish.hint, places, f"by {by} {by_how_much(wish.hint, wish.deck, wish.missed)}", wish.missed)


def _told(hint: Hint, stated: list[Place], misses: str, far: int | None = None) -> Diagnostic:
    return KIND.at(
        hint.span,
        f"{wished(hint)}; {misses}",
        subject=hint.named,
        label="this wish does nothing",
        also=tuple(Label(place.span, f"'{place.thing}' stands here") for place in stated),
        numbers=() if far is None else (Number("missed", far / 10, "mm"),),
        mends=(
            Mend("drop the wish", (Delete(hint.span),)),
            Mend(f"delete the place of '{stated[0].thing}', and it is chosen by the wish", (Delete(stated[0].span),)),
        ),
    )


CHECK = wish_against_place
