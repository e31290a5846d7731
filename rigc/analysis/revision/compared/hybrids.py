"""The rig before with what was stated anew of one cause, and all else as it was: what would have come of that cause alone."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, TypeVar

from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.laying.placed import placed
from rigc.analysis.results import Results
from rigc.analysis.revision.compared.aspect import FACTS, RULES, STOCK
from rigc.model.rig import Rig
from rigc.model.things import Supply

T = TypeVar("T")


def hybrid(old: Rig, new: Rig, causes: Iterable[str], effort: int | None) -> Results:
    """What follows from the old design with these causes taken from the new one. Places that were chosen are chosen
    again, where they can't stay."""
    rig = old
    for cause in causes:
        rig = _WITH[cause](rig, new)
    if any(place.chosen for place in rig.places.values()):
        rig, _ = placed(as_stated(rig), effort, before=old)
    return Results(rig)


def _with_stock(old: Rig, new: Rig) -> Rig:
    """The new stock, and of the old one what is there no more, since its leads may be made of it."""
    mixed: Rig = old.replace(
        stock=new.stock.replace(
            cables={**old.stock.cables, **new.stock.cables},
            plugs={**old.stock.plugs, **new.stock.plugs},
            strips={**old.stock.strips, **new.stock.strips},
        )
    )
    return mixed


def _with_facts(old: Rig, new: Rig) -> Rig:
    """The new facts of what both have, where its jacks are the same: another jack is another design."""
    mixed: Rig = old.replace(
        units=_facts(old.units, new.units),
        supplies=_facts(old.supplies, new.supplies),
        instruments=_facts(old.instruments, new.instruments),
        decks={
            name: new.decks[name].replace(holes=deck.holes, drops_mm=deck.drops_mm, tiers=deck.tiers)
            if name in new.decks
            else deck
            for name, deck in old.decks.items()
        },
        cases={name: new.cases.get(name, case) for name, case in old.cases.items()},
    )
    return mixed


def _with_rules(old: Rig, new: Rig) -> Rig:
    mixed: Rig = old.replace(head=old.head.replace(limits=new.head.limits))
    return mixed


_WITH = {STOCK: _with_stock, FACTS: _with_facts, RULES: _with_rules}


def _facts(old: dict[str, T], new: dict[str, T]) -> dict[str, T]:
    return {
        name: new[name] if name in new and _outside(new[name]) == _outside(thing) else thing
        for name, thing in old.items()
    }


def _outside(thing: Any) -> tuple[Any, ...]:
    """What the rest of the design relies on: the jacks by name and use, pairs, loops and outlets."""
    outlets = tuple(outlet.name for outlet in thing.outlets) if isinstance(thing, Supply) else ()
    jacks = tuple((jack.name, jack.role, jack.connector) for jack in thing.jacks)
    return thing.kind, jacks, thing.pairs, thing.loops, outlets
