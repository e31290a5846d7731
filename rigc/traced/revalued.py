"""A traced number -> the facts of the source that it rests on, and what it would be if some of them were other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rigc.source import Span
from rigc.traced.given import Stated
from rigc.traced.term import Term, Unknown

Place = tuple[str, int, int]
"""Where a fact stands: file, start, end."""


def place_of(span: Span) -> Place:
    """By which a fact is known however often it comes into a number."""
    return span.source.name, span.start, span.end


def facts_in(value: Term) -> dict[Place, Stated]:
    """The stated facts of which a number was made."""
    return {place_of(each.how.fact.span): each.how for each in parts_first(value) if isinstance(each.how, Stated)}


def revalued(value: Term, instead: Mapping[Place, float]) -> float:
    """What a number would be with these in place of the facts that stand there, each in the unit in which it came into it."""
    made: dict[int, float] = {}
    for each in parts_first(value):
        how = each.how
        other = instead.get(place_of(how.fact.span)) if isinstance(how, Stated) else None
        known = [made[id(part)] for part in how.of if isinstance(part, Term)]
        made[id(each)] = how.value(*known) if other is None else other
    return made[id(value)]


def parts_first(value: Term) -> Iterator[Term]:
    """A number and all of which it was made, each once and behind its parts."""
    done: set[int] = set()
    waiting: list[tuple[Term, bool]] = [(value, False)]
    while waiting:
        each, opened = waiting.pop()
        if id(each) in done:
            continue
        if opened:
            done.add(id(each))
            yield each
            continue
        waiting.append((each, True))
        waiting += [(part, False) for part in reversed(each.how.of) if not isinstance(part, Unknown)]
