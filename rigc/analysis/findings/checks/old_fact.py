"""Facts of a unit are older than {guesses.OLD_MONTHS} at the date of the revision, or do not say who found them and when.

Why it matters: makers change a unit under its name, and a figure that nobody signed can't be asked about.
What to do: look at the unit again, and state `measured`, the day and who did it: once for its block, or behind a line.
Judged are units and supplies in use, and the age of what is dated in instruments and decks; serial numbers, owners and prices are no facts that anybody measures.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.findings.dated_facts import DatedFacts
from rigc.analysis.findings.months import months_before
from rigc.analysis.findings.strange_year import StrangeYear
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.facts.guesses import OLD_MONTHS
from rigc.model.deck import Deck
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Thing

KIND = Kind(
    "old-fact",
    Level.REMARK,
    __doc__,
    f"facts say who and when, and are not older than {OLD_MONTHS.value:g} months",
    "common practice, no source",
)


def old_fact(rig: Rig, dated: DatedFacts, strange: StrangeYear) -> Iterator[Diagnostic]:
    """One finding for each thing in use with such facts; what it has of another, as `like` it or by `all-units`, is told once. Where the revision's own year is strange, none is old."""
    limit = "" if strange.nearest else months_before(rig.head.date, round(OLD_MONTHS.value))
    told: set[tuple[str, int]] = set()
    for each in dated.all:
        facts = [fact for fact in each.facts if (fact.span.source.name, fact.span.start) not in told]
        told.update((fact.span.source.name, fact.span.start) for fact in facts)
        old = [fact for fact in facts if fact.provenance is not None and "" < fact.provenance.date < limit]
        unsigned = [fact for fact in facts if each.signs and not _signed(fact)]
        if old or unsigned:
            yield _told(each.thing, old, unsigned, limit)


def _signed(fact: Fact[Any]) -> bool:
    return fact.provenance is not None and bool(fact.provenance.date) and bool(fact.provenance.by.strip())


def _told(thing: Thing | Deck | Instrument, old: list[Fact[Any]], unsigned: list[Fact[Any]], limit: str) -> Diagnostic:
    parts: list[str] = []
    if old:
        oldest = min(fact.provenance.date for fact in old if fact.provenance is not None)
        parts.append(f"{_facts(old)} from before {limit}, the oldest from {oldest}")
    lacks = [(each, _lacks(each)) for each in unsigned]
    for what in ("who or when", "who", "when"):
        if some := [fact for fact, lack in lacks if lack == what]:
            parts.append(f"{_facts(some)} without {what}")
    first = min((*old, *unsigned), key=lambda fact: fact.span.start)
    return KIND.at(
        first.span,
        f"'{thing.name}' has {' and '.join(parts)}",
        subject=(thing.name,),
        label="the first of them",
        also=(Label(thing.declared, f"'{thing.name}' is declared here"),),
        help=_help(old, lacks),
    )


def _lacks(fact: Fact[Any]) -> str:
    if fact.provenance is None or (not fact.provenance.date and not fact.provenance.by.strip()):
        return "who or when"
    return "when" if fact.provenance.by.strip() else "who"


def _help(old: list[Fact[Any]], lacking: list[tuple[Fact[Any], str]]) -> str:
    lacks = {lack for _, lack in lacking}
    if old:
        return 'look at it again, and write the new day and who in place of the old: measured DATE by "WHO"'
    if "who or when" in lacks:
        origins = {None if fact.provenance is None else fact.provenance.kind for fact, _ in lacking}
        kind = origins.pop() if len(origins) == 1 else None
        if kind is not None:
            return f'look at it again, and write when and who behind `{kind}`: {kind} DATE by "WHO"'
        return 'look at it again, and write once in its block: measured DATE by "WHO"'
    missing = [*(['`by "WHO"` behind the date'] if "who" in lacks else []), *(["the date"] if "when" in lacks else [])]
    return f"add {' and '.join(missing)} where they are said to be measured, assumed or from the leaflet"


def _facts(facts: list[Fact[Any]]) -> str:
    return f"{len(facts)} fact{'s' if len(facts) > 1 else ''}"


CHECK = old_fact
