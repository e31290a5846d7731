"""A fact is dated after the day of the revision.

Why it matters: a design of March can't rest on what was measured in May: either the date is a slip of the year, or the
revision's own date was left as it was.
What to do: correct the date of the fact; or, where it is right, give the revision its own day.
Judged are units, amps, supplies, instruments and decks in use.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.findings.facts_of import facts_of
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.rig import Rig

KIND = Kind(
    "future-fact",
    Level.WARNING,
    __doc__,
    "no fact is dated after the day of the revision",
    "common practice, no source",
)


def future_fact(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each thing in use with such facts."""
    for thing in (*used_things(rig, power), *rig.instruments.values(), *rig.decks.values()):
        late = [
            fact for fact in facts_of(thing) if fact.provenance is not None and fact.provenance.date > rig.head.date
        ]
        if not late:
            continue
        last = max(late, key=lambda fact: fact.provenance.date if fact.provenance else "")
        known = last.provenance
        assert known is not None
        several = f"{len(late)} facts of '{thing.name}' are" if len(late) > 1 else f"a fact of '{thing.name}' is"
        yield KIND.at(
            known.span,
            f"{several} {known.kind} on {known.date}, after revision {rig.head.letter} of {rig.head.date}",
            subject=(thing.name,),
            label="after the revision",
            also=(Label(rig.head.span, "the revision is declared here"),),
            help="correct the date, or give the revision its own day",
        )


CHECK = future_fact
