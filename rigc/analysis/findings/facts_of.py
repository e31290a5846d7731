"""A thing -> every fact that is stated of it, wherever in it the fact is held."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.model.deck import Deck
from rigc.model.fact import Fact
from rigc.model.things import Instrument, Paperwork, Thing
from rigc.record import Record


def facts_of(thing: Thing | Deck | Instrument) -> tuple[Fact[Any], ...]:
    """The facts in the order of the source, each statement's once; its papers are none that anybody measures."""
    found = {(fact.span.source.name, fact.span.start, fact.span.end): fact for fact in facts_within(thing, Paperwork)}
    return tuple(found[at] for at in sorted(found))


def facts_within(value: Any, *left_out: type[Record]) -> Iterator[Fact[Any]]:
    """Every fact within a record, but for those in records of these kinds."""
    if isinstance(value, Fact):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from facts_within(each, *left_out)
    elif isinstance(value, Record) and not isinstance(value, left_out):
        for name in value.FIELDS:
            yield from facts_within(getattr(value, name), *left_out)
