"""The facts of a unit are of another hardware version than the unit that the client owns.

Why it matters: the side of a jack, the current and the polarity often change between versions under one name.
What to do: take the facts of the version that is fitted, or measure the client's unit, and let `version` say so.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.rig import Rig
from rigc.model.things import Thing

KIND = Kind(
    "hardware-version",
    Level.WARNING,
    __doc__,
    "the version of the facts is the version that is fitted",
    "common practice, no source",
)


def hardware_version(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each thing in use whose two versions differ; nothing where one of them is not said."""
    for thing in used_things(rig, power):
        known, fitted = thing.papers.version, thing.papers.fitted
        if known is not None and fitted is not None and known.value.strip() != fitted.value.strip():
            yield _told(thing, known.value, fitted.value)


def _told(thing: Thing, known: str, fitted: str) -> Diagnostic:
    papers = thing.papers
    return KIND.at(
        papers.fitted.span if papers.fitted else thing.declared,
        f'the facts of \'{thing.name}\' are of version "{known}", but version "{fitted}" is fitted',
        subject=(thing.name,),
        label="on the client's unit",
        also=(Label(papers.version.span, "what the facts are of"),) if papers.version else (),
        help=f'measure the client\'s unit, above all jacks and current, and state version "{fitted}"',
    )


CHECK = hardware_version
