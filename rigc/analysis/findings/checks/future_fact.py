"""A fact is dated after the day of the revision.

Why it matters: a design of March can't rest on what was measured in May: either the date is a slip of the year, or the
revision's own date was left as it was.
What to do: correct the date of the fact; or, where it is right, give the revision its own day.
Judged are units, amps, supplies, instruments and decks in use.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.findings.dated_facts import DatedFacts
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.fact import Fact, Provenance
from rigc.model.rig import Rig

_FEW = 3

KIND = Kind(
    "future-fact",
    Level.WARNING,
    __doc__,
    "no fact is dated after the day of the revision",
    "common practice, no source",
)


def future_fact(rig: Rig, every: DatedFacts) -> Iterator[Diagnostic]:
    """One finding for each statement that dates such facts; one for all where they are many: then the revision's day is the likelier slip."""
    dated: dict[tuple[str, int], list[tuple[str, list[Fact[Any]]]]] = {}
    for each in every.all:
        late = [fact for fact in each.facts if fact.provenance is not None and fact.provenance.date > rig.head.date]
        if late:
            span = _latest(late).span
            dated.setdefault((span.source.name, span.start), []).append((each.thing.name, late))
    if len(dated) > _FEW:
        yield _all(rig, list(dated.values()))
        return
    for things in dated.values():
        yield _told(rig, things)


def _all(rig: Rig, dated: list[list[tuple[str, list[Fact[Any]]]]]) -> Diagnostic:
    """So many that the revision bears the wrong day, or each of them the same slip."""
    things = [thing for each in dated for thing in each]
    facts = [fact for _, late in things for fact in late]
    last = _latest(facts).date
    return KIND.at(
        rig.head.span,
        f"{len(facts)} facts of {len(things)} things are dated after revision {rig.head.letter} of {rig.head.date}, the last "
        f"of them {last}",
        subject=tuple(name for name, _ in things),
        label="this revision",
        also=tuple(
            Label(_latest([fact for _, late in each for fact in late]).span, "dated after it") for each in dated[:_FEW]
        ),
        help="give the revision its own day, or correct the dates",
    )


def _latest(facts: list[Fact[Any]]) -> Provenance:
    return max((fact.provenance for fact in facts if fact.provenance is not None), key=lambda known: known.date)


def _told(rig: Rig, things: list[tuple[str, list[Fact[Any]]]]) -> Diagnostic:
    names, late = [name for name, _ in things], [fact for _, facts in things for fact in facts]
    known = _latest(late)
    several = f"{len(late)} facts of {listed(names)} are" if len(late) > 1 else f"a fact of {listed(names)} is"
    return KIND.at(
        known.span,
        f"{several} {known.kind} on {known.date}, after revision {rig.head.letter} of {rig.head.date}",
        subject=tuple(names),
        label="after the revision",
        also=(Label(rig.head.span, "the revision is declared here"),),
        help="correct the date, or give the revision its own day",
    )


CHECK = future_fact
