"""A wish for a place is not met by the places that the source itself states.

Why it matters: what is stated is kept, so the wish does nothing; whoever reads it takes the board for another one.
What to do: delete the one that is no longer meant, the wish or the place.
Source: geometry on stated places; the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.laying.search.board import Wish
from rigc.analysis.laying.wished import missed_on
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.deck import Deck, Hint, Place
from rigc.model.rig import Rig

KIND = Kind(
    "wish-against-place",
    Level.WARNING,
    __doc__,
    "stated places meet the wishes for them",
    "geometry on stated places; the language reference, grammar/README.md",
)


def wish_against_place(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each wish that leaves nothing to choose and is not met."""
    for hint in rig.hints:
        places = [rig.places.get(name) for name in (hint.thing, hint.other) if name is not None]
        stated = [place for place in places if place is not None and not place.chosen]
        if len(stated) < len(places):
            continue
        far = _far(rig, placement, hint)
        if far is None or far > 0:
            yield _told(hint, stated, far)


def _far(rig: Rig, placement: Placement, hint: Hint) -> int | None:
    """By how many tenths of a millimetre a wish is missed, 0 where that can't be said; None where two decks stand between."""
    here, there = placement.outline(hint.thing), placement.outline(hint.other or "")
    if here is None or (hint.other is not None and there is None):
        return 0
    if there is not None and there.deck != here.deck:
        return None
    deck = rig.decks.get(here.deck or "")
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return 0
    outlines = [each for each in placement.outlines.values() if each.deck == here.deck]
    names = [each.thing for each in outlines]
    wish = Wish(
        hint.kind,
        names.index(hint.thing),
        hint.word,
        -1 if hint.other is None else names.index(hint.other),
        None if hint.gap_mm is None else tenths(hint.gap_mm),
    )
    return missed_on(_size(deck), wish, [_box(each) for each in outlines], [each.under for each in outlines])


def _size(deck: Deck) -> tuple[int, int]:
    assert deck.width_mm is not None and deck.depth_mm is not None
    return tenths(deck.width_mm.value), tenths(deck.depth_mm.value)


def _box(body: Outline) -> tuple[int, int, int, int]:
    x, y = body.x_mm, body.y_mm
    return tenths(x), tenths(y), tenths(x + body.width_mm), tenths(y + body.depth_mm)


def _told(hint: Hint, stated: list[Place], far: int | None) -> Diagnostic:
    by = "its stated place" if hint.other is None else "the stated places"
    misses = "they stand on two decks" if far is None else f"it misses that by {far / 10:g} mm"
    return KIND.at(
        hint.span,
        f"'{hint.thing}' is wished {hint.words}; by {by} {misses}",
        subject=tuple(name for name in (hint.thing, hint.other) if name),
        label="this wish does nothing",
        also=tuple(Label(place.span, f"'{place.thing}' stands here") for place in stated),
        numbers=() if far is None else (Number("missed", far / 10, "mm"),),
        mends=(
            Mend("drop the wish", (Delete(hint.span),)),
            Mend(f"delete the place of '{hint.thing}', and it is chosen by the wish", (Delete(stated[0].span),)),
        ),
    )


CHECK = wish_against_place
