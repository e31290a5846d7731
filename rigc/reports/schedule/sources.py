"""A thing -> where its facts come from: measured, leaflet or assumed, when and by whom."""

from __future__ import annotations

from typing import Any

from rigc.model.fact import Fact, Provenance, facts_within
from rigc.record import Record


def sources_of(thing: Record) -> str:
    """`measured 2026-02-14 by R.K.; assumed: draws`: what most facts say first, the others with the words of their statements."""
    told: dict[str, dict[str, None]] = {}
    for fact in facts_within(thing):
        told.setdefault(provenance_words(fact.provenance), {})[statement_word(fact)] = None
    if not told:
        return ""
    most = max(told, key=lambda words: len(told[words]))
    rest = [f"{words}: {', '.join(facts)}" for words, facts in told.items() if words != most]
    return "; ".join([most, *rest])


def provenance_words(known: Provenance | None) -> str:
    """`measured 2026-02-14 by R.K.`; `not said` where the source does not say."""
    if known is None:
        return "not said"
    return " ".join(part for part in (known.kind, known.date, f"by {known.by}" if known.by else "") if part)


def statement_word(fact: Fact[Any]) -> str:
    """The word with which the statement of a fact begins, `draws` or `power`."""
    line = fact.span.source.line(fact.span.line).split()
    return line[0] if line else ""
