"""An input is fed more than {levels.LOW_BY_DB} below the level that drives it fully: an instrument's level into a line return.

Why it matters: what is lacking must be lifted behind it, and noise is lifted with it.
What to do: raise the level before that input, set the amp's loop to instrument level where it can be set, or bring the
sound to the amp's front input.
Source: common practice, no source; the comparison is arithmetic on stated levels.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.levels.levels import LevelEdge, Levels
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.levels import LOW_BY_DB
from rigc.model.rig import Rig

KIND = Kind(
    "too-weak",
    Level.WARNING,
    __doc__,
    f"nominal level >= what drives the input fully - {LOW_BY_DB}",
    "common practice, no source",
    about=1,
)


def too_weak(rig: Rig, levels: Levels) -> Iterator[Diagnostic]:
    """One finding for each input; can't-check for each return of an amp's own loop of which the levels are not known."""
    told: set[str] = set()
    for edge in levels.edges:
        name = edge.end.thing
        if edge.short_db > 0:
            yield _told(edge)
        elif edge.wants_line and name not in told and (edge.sensitivity is None or edge.low_dbu is None):
            told.add(name)
            yield _unknown(rig, edge)


def _told(edge: LevelEdge) -> Diagnostic:
    assert edge.sensitivity is not None and edge.low_dbu is not None and edge.below_db is not None
    where = edge.when
    return KIND.at(
        edge.span,
        f"'{edge.end}' wants {decimals(edge.sensitivity.value)} dBu and gets {decimals(edge.low_dbu)} dBu from '{edge.start}'"
        f"{where}: {decimals(edge.below_db)} dB too little",
        subject=(edge.end.thing, edge.start.thing, str(edge.end)),
        label="too little arrives here",
        also=(Label(edge.sensitivity.span, "what drives it fully"),),
        numbers=(
            Number("nominal", edge.low_dbu, "dBu"),
            Number("sensitivity", edge.sensitivity.value, "dBu"),
            Number("below", edge.below_db, "dB"),
        ),
        help=f"raise the level before '{edge.end}' by at least {decimals(edge.short_db)} dB"
        + (", or set the loop to instrument level" if edge.wants_line else ""),
    )


def _unknown(rig: Rig, edge: LevelEdge) -> Diagnostic:
    name = edge.end.thing
    if edge.sensitivity is None:
        said, help = (
            f"'{name}' does not say what level drives '{edge.end}' fully",
            f"find it out and write it in '{name}': `level {edge.end.jack} sensitivity ___ dBu`",
        )
    else:
        said, help = (
            f"the level that '{edge.start}' brings to '{edge.end}' is not known",
            f"measure it there and write it in '{edge.start.thing}': `level {edge.start.jack} ___ dBu peak ___ dBu`",
        )
    return KIND.cant_check(
        rig.things[name].declared,
        f"{said}; line against instrument at this loop can't be checked",
        subject=(name, str(edge.end)),
        help=help,
    )


CHECK = too_weak
