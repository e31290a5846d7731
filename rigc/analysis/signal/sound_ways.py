"""Rig -> for each set of leads that hold at one time, where sound goes on from each jack with everything on."""

from __future__ import annotations

from functools import cached_property

from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.inner_ways import Way, inner_ways
from rigc.model.wishes import Connection, When
from rigc.record import Record


class Hookup(Record):
    """One way in which the rig is wired: its audio leads, the ways through its units, and when it holds.

    `scenarios` and `instruments` are those in which the leads are the same; empty where the rig names none.
    """

    scenarios: tuple[str, ...]
    instruments: tuple[str, ...]
    leads: tuple[Connection, ...]
    inner: tuple[Way, ...]

    @cached_property
    def onward(self) -> dict[Port, tuple[Port, ...]]:
        """From each jack to the next ones, leads and inner ways together."""
        found: dict[Port, dict[Port, None]] = {}
        for start, end in (*((lead.start, lead.end) for lead in self.leads), *self.inner):
            found.setdefault(start, {})[end] = None
        return {port: tuple(ends) for port, ends in found.items()}

    @cached_property
    def wired(self) -> frozenset[Port]:
        """The jacks that hold a lead."""
        return frozenset(port for lead in self.leads for port in (lead.start, lead.end))

    @cached_property
    def sources(self) -> tuple[Port, ...]:
        """The jacks of instruments from which leads go."""
        return tuple(dict.fromkeys(lead.start for lead in self.leads if lead.start.thing in self.instruments))


class SoundWays(Record):
    """The ways in which the rig is wired, equal ones once, in the order of scenarios and instruments."""

    hookups: tuple[Hookup, ...]


def sound_ways(rig: Rig) -> SoundWays:
    """Looks at every scenario with every instrument."""
    audio = [each for each in rig.connections if each.signal == "audio"]
    times: dict[tuple[int, ...], list[When]] = {}
    for scenario in rig.scenarios or ("",):
        for instrument in rig.instruments or ("",):
            when = When((scenario,) if scenario else (), instrument or None)
            holding = _holding(rig, audio, scenario, when)
            if holding:
                times.setdefault(holding, []).append(when)
    return SoundWays(tuple(_hookup(rig, tuple(audio[at] for at in found), whens) for found, whens in times.items()))


def _holding(rig: Rig, audio: list[Connection], scenario: str, when: When) -> tuple[int, ...]:
    """The numbers of the leads that hold: none from other instruments, none to amps and desks that the scenario leaves at home."""
    used = rig.scenarios[scenario].amps if scenario else None
    away = {unit.name for unit in rig.units.values() if unit.ends and used is not None and unit.name not in used}
    away |= {name for name in rig.instruments if name != when.instrument}
    return tuple(
        at for at, each in enumerate(audio) if each.when.meets(when) and not away & {each.start.thing, each.end.thing}
    )


def _hookup(rig: Rig, leads: tuple[Connection, ...], whens: list[When]) -> Hookup:
    wired = frozenset(port for lead in leads for port in (lead.start, lead.end))
    names = dict.fromkeys(port.thing for lead in leads for port in (lead.start, lead.end))
    inner = tuple(way for name in names if name in rig.units for way in stereo_ways(rig, rig.units[name], wired))
    return Hookup(
        tuple(dict.fromkeys(name for when in whens for name in when.scenarios)),
        tuple(dict.fromkeys(when.instrument for when in whens if when.instrument)),
        leads,
        inner,
    )


COMPUTE = sound_ways


def stereo_ways(rig: Rig, unit: Unit, wired: frozenset[Port]) -> list[Way]:
    """The ways with everything on. Stated paths stand; else, of a wired input pair, neither side feeds the other's output.

    A pair of which one side is wired feeds both outputs: so a mono way becomes a stereo one.
    """
    ways = inner_ways(rig, unit, wired)
    if unit.paths:
        return ways
    sides = {name: side for pair in unit.pairs for side, name in enumerate(pair)}
    whole = {name for pair in unit.pairs if all(Port(unit.name, each) in wired for each in pair) for name in pair}
    return [
        (start, end)
        for start, end in ways
        if not (start.jack in whole and end.jack in sides and sides[start.jack] != sides[end.jack])
    ]
