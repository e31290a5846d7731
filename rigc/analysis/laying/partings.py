"""A rig's things -> which two of them must keep apart on a deck, above and below: a coil from a transformer, what gets warm from over
a supply."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.air_gaps import gets_warm
from rigc.analysis.deck.coils import has_coil, may_hold_transformer
from rigc.analysis.laying.search.board import Parting
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.separation import COIL_MM
from rigc.model.things import Supply, Thing, Unit


def partings(things: tuple[Thing, ...], under: frozenset[str]) -> tuple[Parting, ...]:
    """By their numbers in that order; `under` things hang below the deck."""
    return tuple(_partings(things, under))


def _partings(things: tuple[Thing, ...], under: frozenset[str]) -> Iterator[Parting]:
    for number, thing in enumerate(things):
        if not isinstance(thing, Supply):
            continue
        for other, unit in enumerate(things):
            if isinstance(unit, Unit) and has_coil(unit) and may_hold_transformer(thing):
                yield Parting(number, other, tenths(COIL_MM.value))
            elif thing.name in under and unit.name not in under and gets_warm(unit):
                yield Parting(number, other, 0)
