"""A thing -> every fact that is stated of it, wherever in it the fact is held; its papers are none that anybody measures."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.model.deck import Deck
from rigc.model.fact import Fact
from rigc.model.things import Instrument, Paperwork, Thing
from rigc.record import Record


def facts_of(thing: Thing | Deck | Instrument) -> tuple[Fact[Any], ...]:
    """The facts in the order of the source, each statement's once."""
    found = {(fact.span.source.name, fact.span.start, fact.span.end): fact for fact in _inside(thing)}
    return tuple(found[at] for at in sorted(found))


def _inside(value: Any) -> Iterator[Fact[Any]]:
    if isinstance(value, Fact):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from _inside(each)
    elif isinstance(value, Record) and not isinstance(value, Paperwork):
        for name in value.FIELDS:
            yield from _inside(getattr(value, name))
