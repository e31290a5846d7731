"""A unit through which no sound goes (a treadle, a switch, a MIDI controller or splitter) stands on the board, and no lead comes to any of its jacks.

Why it matters: it takes room and mass, and on stage nothing happens when a foot comes down on it; mostly a line was forgotten.
What to do: write its lead in the control or the midi block, or take it off the board.
Source: arithmetic on the stated leads. A spare, and what an as-built block swaps, is not looked at; nor is a unit that has a MIDI channel,
for that is told as unheard-midi-channel.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "joined-to-nothing",
    Level.WARNING,
    __doc__,
    "a unit without audio jacks that is used is joined by a control, MIDI or USB lead",
    "arithmetic on the stated leads",
)

_MOST = 4
"""Mends that are offered."""


def joined_to_nothing(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such unit."""
    joined = {port.thing for lead in rig.connections for port in (lead.start, lead.end)}
    away = {name for built in rig.as_built for out, into, _ in built.swaps for name in (out, into)}
    away |= {spare.thing for spare in rig.spares} | {channel.unit for channel in rig.channels}
    for unit in used_units(rig):
        jacks = [jack for jack in unit.jacks if jack.role != "inlet"]
        if jacks and not any(jack.audio for jack in jacks) and unit.name not in joined | away:
            yield _told(rig, unit, jacks)


def _told(rig: Rig, unit: Unit, jacks: list[Jack]) -> Diagnostic:
    ports = [Port(unit.name, jack.name) for jack in jacks]
    midi = jacks[0].role.startswith("midi")
    block = "midi" if midi else "control"
    inward = jacks[0].role.endswith((" in", "port"))
    line = f"___ -> {ports[0]}" if inward else f"{ports[0]} -> ___"
    return KIND.at(
        unit.declared,
        f"no lead comes to '{unit.name}', whose {'jack is' if len(ports) == 1 else 'jacks are'} {listed(ports)}",
        subject=(unit.name, *map(str, ports)),
        label="joined to nothing",
        mends=_mends(rig, unit, jacks),
        otherwise=f"write its lead in the {block} block: `{line}`; or take '{unit.name}' off the board",
    )


def _mends(rig: Rig, unit: Unit, jacks: list[Jack]) -> tuple[Mend, ...]:
    """The lead from an expression or a switching jack of it to one of its kind that holds none, plain or crossed."""
    taken = {port for lead in rig.connections for port in (lead.start, lead.end)}
    lines = [
        f"{Port(unit.name, mine.name)} -> {Port(other.name, jack.name)}{crossed}"
        for mine in jacks
        if mine.role in ("expression out", "control out")
        for other in rig.units.values()
        if other.name != unit.name
        for jack in other.jacks
        if jack.role == mine.role.replace(" out", " in") and Port(other.name, jack.name) not in taken
        for crossed in ("", " crossover")
    ]
    return tuple(Mend(f"write `{line}` in the control block", (AddTo("control", "", line),)) for line in lines[:_MOST])


CHECK = joined_to_nothing
