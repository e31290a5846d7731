"""What could not be placed, and why -> findings of bodies-overlap."""

from __future__ import annotations

from rigc.analysis.deck.checks.bodies_overlap import KIND
from rigc.diagnostics.diagnostic import Diagnostic, Level, Number
from rigc.diagnostics.mend import Delete, Mend
from rigc.diagnostics.wording import listed
from rigc.model.deck import Deck, Hint
from rigc.model.rig import Rig
from rigc.model.things import Thing


def no_body(thing: Thing, deck: Deck) -> Diagnostic:
    """A thing whose size is not known."""
    return KIND.cant_check(
        thing.declared,
        f"no place on '{deck.name}' can be chosen for '{thing.name}': its width and depth are not stated",
        subject=(thing.name,),
        help=f"measure '{thing.name}' and state its `body`, or state its place",
    )


def no_room(rig: Rig, deck: Deck, name: str, short: int) -> Diagnostic:
    """A thing for which there is no room; at its best place it lacks so many tenths of a millimetre."""
    thing = rig.things[name]
    assert isinstance(thing, Thing) and thing.width_mm is not None and thing.depth_mm is not None
    assert deck.width_mm is not None and deck.depth_mm is not None
    return KIND.at(
        thing.declared,
        f"there is no room for '{name}' ({thing.width_mm.value:g} x {thing.depth_mm.value:g} mm) on '{deck.name}': "
        f"even the best place found is {short / 10:g} mm too small, plugs and foot room included",
        subject=(name, deck.name),
        label="has no stated place",
        numbers=(Number("lacking", short / 10, "mm"),),
        help="choose a larger deck (see `rigc show fit`), leave a unit out, or search longer with --effort",
    )


def wish_missed(hint: Hint, far: int, by: tuple[str, ...]) -> Diagnostic:
    """A wish that the best layout found does not meet in full; `by` is what stands where it would be met."""
    way = f"{listed(by)} {'stands' if len(by) == 1 else 'stand'} in its way" if by else "the deck has no such place"
    return KIND.at(
        hint.span,
        f"'{hint.thing}' is wished {hint.words} and stands {far / 10:g} mm off that: {way}",
        subject=tuple(name for name in (hint.thing, hint.other) if name),
        label="this wish is not met in full",
        level=Level.REMARK,
        numbers=(Number("missed", far / 10, "mm"),),
        mends=(Mend("drop the wish", (Delete(hint.span),)),),
    )
