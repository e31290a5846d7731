"""A thing is said to stand in for one, or to be one under another name, that the revision before does not have.

Why it matters: the rework sheet pairs what goes with what comes by these lines; a name that nothing bore pairs nothing, and what it was to
take the place of is left to a guess.
What to do: write the name as the revision before has it.
A line that this thing bore there already was true of a still earlier revision, and is no finding.
Source: the language reference, grammar/README.md.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.rig import Rig
from rigc.model.things import Supply, Unit
from rigc.source import Span

KIND = Kind(
    "succeeds-nothing",
    Level.WARNING,
    __doc__,
    "what a thing stands in for, or was, is declared in the revision before",
    "the language reference, grammar/README.md",
)


def succeeds_nothing(rig: Rig, previous: Previous) -> Iterator[Diagnostic]:
    """One finding for each such line; none while the revision before can't be read, which is told."""
    if previous.results is None:
        return
    before, then = previous.results.rig, dict(previous.renamed)
    declared = [then.get(name, name) for name in (*before.units, *before.supplies)]
    for thing in (*rig.units.values(), *rig.supplies.values()):
        stood = before.things.get(thing.name)
        bore = (stood.was, stood.stands_in) if isinstance(stood, Unit | Supply) else (None, None)
        if thing.was is not None and thing.was_at is not None and thing.was not in (*declared, bore[0]):
            yield _told(rig, previous, thing.name, "was", thing.was, thing.was_at, declared)
        if (
            thing.stands_in is not None
            and thing.stands_in_at is not None
            and thing.stands_in not in (*declared, bore[1])
        ):
            yield _told(rig, previous, thing.name, "stands in for", thing.stands_in, thing.stands_in_at, declared)


def _told(rig: Rig, previous: Previous, name: str, said: str, other: str, at: Span, declared: list[str]) -> Diagnostic:
    gone = [each for each in declared if each not in rig.things]
    near = nearest(other, gone) or nearest(other, declared)
    return KIND.at(
        at,
        f"'{name}' {said} '{other}', which revision {previous.letter} does not have",
        subject=(name, other),
        label=f"did you mean '{near}'?" if near else "not there",
        mends=(Mend(f"write `{said} {near}`", (Replace(at, f"{said} {near}"),)),)
        if near
        else (Mend(f"delete `{said} {other}`", (Delete(at),)),),
        help="" if near else f"write the name as revision {previous.letter} has it",
    )


CHECK = succeeds_nothing
