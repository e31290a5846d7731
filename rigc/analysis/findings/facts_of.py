"""A thing -> every fact that is stated of it, wherever in it the fact is held."""

from __future__ import annotations

from typing import Any

from rigc.model.deck import Deck
from rigc.model.fact import Fact, facts_within
from rigc.model.things import Instrument, Paperwork, Thing


def facts_of(thing: Thing | Deck | Instrument) -> tuple[Fact[Any], ...]:
    """The facts in the order of the source, each statement's once; its papers are none that anybody measures."""
    found = {(fact.span.source.name, fact.span.start, fact.span.end): fact for fact in facts_within(thing, Paperwork)}
    return tuple(found[at] for at in sorted(found))
