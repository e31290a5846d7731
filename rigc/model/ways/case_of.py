"""A rig -> which case each of its decks travels in."""

from __future__ import annotations

from rigc.model.deck import Case
from rigc.model.rig import Rig
from rigc.record import Record


class Packing(Record):
    """Cases with the decks in each, then decks that go into none (case None), each alone; `unclear` names cases of which nobody
    says what they hold, while more than one could hold a deck."""

    loads: tuple[tuple[str | None, tuple[str, ...]], ...]
    unclear: tuple[str, ...]


def packing(rig: Rig) -> Packing:
    """A case holds what it says; the only one that says nothing holds all other decks on which something stands."""
    first = "" if rig.deck is None else rig.deck.name
    stands = {place.deck or first for place in rig.places.values()}
    used = [name for name in rig.decks if name in stands]
    held = {name for case in rig.cases.values() for name in case.holds}
    rest = tuple(name for name in used if name not in held)
    silent = tuple(case.name for case in rig.cases.values() if not case.holds)
    if rest and len(silent) > 1:
        return Packing((), silent)
    loads: list[tuple[str | None, tuple[str, ...]]] = []
    for case in rig.cases.values():
        decks = case.holds or rest
        if decks:
            loads.append((case.name, decks))
    if rest and not silent:
        loads += [(None, (name,)) for name in rest] if rig.cases else [(None, rest)]
    return Packing(tuple(loads), ())


def cases_for(rig: Rig, deck: str) -> tuple[Case, ...]:
    """The case that says that it holds a deck, else those that say nothing."""
    stated = tuple(case for case in rig.cases.values() if deck in case.holds)
    return stated or tuple(case for case in rig.cases.values() if not case.holds)
