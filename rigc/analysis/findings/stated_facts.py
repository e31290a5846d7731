"""A rig -> every fact that is stated of each of its instruments, units, supplies and decks, wherever in it the fact is held."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from rigc.model.deck import Deck
from rigc.model.fact import Fact, facts_within
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Paperwork, Thing
from rigc.record import Record

Facts = tuple[Fact[Any], ...]


class StatedFacts(Record):
    """Of each thing by its name, and of each deck, the facts in the order of the source, each statement's once; papers are none that
    anybody measures."""

    things: dict[str, Facts]
    decks: dict[str, Facts]

    def of(self, each: Thing | Instrument | Deck) -> Facts:
        """Those of one of them."""
        return (self.decks if isinstance(each, Deck) else self.things)[each.name]


def stated_facts(rig: Rig) -> StatedFacts:
    """Each thing is looked through once."""
    return StatedFacts(
        _by_name((*rig.instruments.values(), *rig.units.values(), *rig.supplies.values())),
        _by_name(rig.decks.values()),
    )


def _by_name(things: Iterable[Thing | Instrument | Deck]) -> dict[str, Facts]:
    return {each.name: _in_order(facts_within(each, Paperwork)) for each in things}


def _in_order(facts: Facts) -> Facts:
    found = {(fact.span.source.name, fact.span.start, fact.span.end): fact for fact in facts}
    return tuple(found[at] for at in sorted(found))


COMPUTE = stated_facts
