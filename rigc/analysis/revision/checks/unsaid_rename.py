"""A thing bears the serial number of one of the revision before that had another name, and does not say that it `was` that one.

Why it matters: without `was` the old one goes and a new one comes: the rework sheet has a unit taken off and plugged anew that nobody
touches, where only labels are to be printed.
What to do: write `was` and the old name; where they are two things, read the serial number again.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.model.rig import Rig
from rigc.model.things import Supply, Unit

KIND = Kind(
    "unsaid-rename",
    Level.WARNING,
    __doc__,
    "a thing that had another name in the revision before, as its serial number tells, says so by `was`",
    "common practice, no source",
)


def unsaid_rename(rig: Rig, previous: Previous) -> Iterator[Diagnostic]:
    """One finding for each thing that is new by its name and not by its serial number."""
    if previous.results is None:
        return
    before = previous.results.rig
    gone = {_numbered(thing): thing.name for thing in _numbered_things(before) if thing.name not in rig.things}
    for thing in _numbered_things(rig):
        old = gone.get(_numbered(thing))
        if old is None or thing.name in before.things or thing.was is not None or thing.stands_in is not None:
            continue
        yield KIND.at(
            thing.declared,
            f"'{thing.name}' bears the serial number \"{_numbered(thing)[1]}\" of '{old}', which revision {previous.letter} has and "
            "this one has not",
            subject=(thing.name, old),
            label="the same thing under another name?",
            mends=(Mend(f"write `was {old}` into its block", (AddTo(thing.kind, thing.name, f"was {old}"),)),),
            help=f"if it is another thing, read its serial number again, and write `stands in for {old}`",
        )


def _numbered_things(rig: Rig) -> list[Unit | Supply]:
    things: list[Unit | Supply] = [*rig.units.values(), *rig.supplies.values()]
    return [thing for thing in things if thing.papers.serial is not None]


def _numbered(thing: Unit | Supply) -> tuple[str, str]:
    """Its kind and its serial number."""
    return thing.kind, "" if thing.papers.serial is None else thing.papers.serial.value


CHECK = unsaid_rename
