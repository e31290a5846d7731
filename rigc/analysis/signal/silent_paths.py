"""Hookups and bypass plans -> the ways on which nothing is heard once the power fails, in the all-off state."""

from __future__ import annotations

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.least_silent_way import least_silent_ways, stops_sound
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.inner_ways import sinks
from rigc.record import Record


class SilentPath(Record):
    """Ways from an instrument to the jacks `ends` on which the same units pass nothing.

    `planned` where in each scenario a bypass plan goes round all of them to one of these ends; else `ends` and `scenarios` are
    those for which none does, `scenarios` empty where it is so in all.
    """

    instrument: str
    ends: tuple[Port, ...]
    units: tuple[str, ...]
    planned: bool
    scenarios: tuple[str, ...]


class SilentPaths(Record):
    """The ways that fall silent, and the units on any way that do not say what they do without power."""

    all: tuple[SilentPath, ...]
    unsure: tuple[str, ...]


def silent_paths(rig: Rig, ways: SoundWays) -> SilentPaths:
    """Ways on which the same units stop the sound are one."""
    found: dict[tuple[str, tuple[str, ...]], list[tuple[Hookup, dict[Port, bool]]]] = {}
    unsure: dict[str, None] = {}
    for hookup in ways.hookups:
        here: dict[tuple[str, tuple[str, ...]], dict[Port, bool]] = {}
        for source in hookup.sources:
            for end, way in least_silent_ways(rig, hookup, source, _ends(rig, hookup)).items():
                names = dict.fromkeys(port.thing for port in way if port.thing in rig.units)
                stops = {name: stops_sound(rig.units[name]) for name in names}
                unsure.update(dict.fromkeys(name for name, each in stops.items() if each is None))
                silent = tuple(name for name, each in stops.items() if each)
                if silent:
                    planned = any(_goes_round(plan.start, plan.end, way, silent) for plan in rig.bypass_plans)
                    here.setdefault((source.thing, silent), {})[end] = planned
        for key, ends in here.items():
            found.setdefault(key, []).append((hookup, ends))
    return SilentPaths(tuple(_path(*key, times) for key, times in found.items()), tuple(unsure))


def _path(instrument: str, silent: tuple[str, ...], times: list[tuple[Hookup, dict[Port, bool]]]) -> SilentPath:
    unplanned = [(hookup, ends) for hookup, ends in times if not any(ends.values())]
    ends = tuple(dict.fromkeys(end for _, each in unplanned or times for end in each))
    scenarios = dict.fromkeys(name for hookup, _ in unplanned for name in hookup.scenarios)
    partly = 0 < len(unplanned) < len(times)
    return SilentPath(instrument, ends, silent, not unplanned, tuple(scenarios) if partly else ())


def _ends(rig: Rig, hookup: Hookup) -> list[Port]:
    """Where sound leaves the rig: amps, desks, and panel jacks that feed no lead."""
    amps = [port for unit in rig.units.values() if unit.kind != "unit" for port in amp_ends(unit, hookup.wired)]
    return [*amps, *(port for port in sinks(rig) if port.thing in rig.panels)]


def _goes_round(start: Port, end: Port, way: tuple[Port, ...], silent: tuple[str, ...]) -> bool:
    """Whether a lead from one jack to another leaves out every silent unit of a way."""
    if start not in way or end not in way:
        return False
    places = [place for place, port in enumerate(way) if port.thing in silent]
    return way.index(start) < min(places) and max(places) < way.index(end)


COMPUTE = silent_paths
