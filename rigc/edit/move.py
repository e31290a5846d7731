"""A thing is put elsewhere on its deck -> the texts that say so; all else in them keeps its bytes.

Where rigc chose places, stating one of them alone would let it choose the others anew: they are stated with it, as `rigc pin` does.
"""

from __future__ import annotations

from rigc.analysis.laying.place_statement import place_statement
from rigc.edit.change import Change, changed
from rigc.edit.into_block import places_stated
from rigc.loader import STOCK
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.syntax.nodes import File


class CannotMove(Exception):
    """A thing can't be put there by an edit of the text; the text of the exception says why."""


def moved(file: File, rig: Rig, thing: str, x_mm: float, y_mm: float) -> dict[str, str]:
    """The new texts by the names of their sources; `file` is the rig's own. Raises `CannotMove`."""
    there = _there(rig, thing, x_mm, y_mm)
    chosen = [there if place.thing == thing else place for place in rig.places.values() if place.chosen]
    own = file.span.source
    changes = [places_stated(file, [place_statement(place) for place in chosen])] if chosen else []
    if there.chosen:
        return {own.name: changed(own, changes)}
    numbers = there.numbers
    if numbers is None or numbers.source.name.startswith(STOCK):
        raise CannotMove(f"the place of '{thing}' is not written in the rig's files")
    stated = Change(numbers.start, numbers.end, f"{there.x_mm:.10g}, {there.y_mm:.10g} mm")
    if numbers.source is own:
        return {own.name: changed(own, [*changes, stated])}
    texts = {numbers.source.name: changed(numbers.source, [stated])}
    return texts | ({own.name: changed(own, changes)} if changes else {})


def stated_with(rig: Rig, thing: str) -> tuple[str, ...]:
    """What else gets a stated place when a thing is moved, in the order of the rig."""
    return tuple(place.thing for place in rig.places.values() if place.chosen and place.thing != thing)


def _there(rig: Rig, thing: str, x_mm: float, y_mm: float) -> Place:
    place = rig.places.get(thing)
    if place is None:
        raise CannotMove(f"'{thing}' has no place yet")
    deck = rig.decks.get(place.deck or "", rig.deck)
    wide, deep = (None, None) if deck is None else (deck.width_mm, deck.depth_mm)
    if wide is None or deep is None:
        raise CannotMove(f"the size of the deck on which '{thing}' stands is not stated")
    if not (0 <= x_mm <= wide.value and 0 <= y_mm <= deep.value):
        raise CannotMove(f"{x_mm:g}, {y_mm:g} mm is not on the deck")
    there: Place = place.replace(x_mm=round(x_mm, 1), y_mm=round(y_mm, 1))
    return there
