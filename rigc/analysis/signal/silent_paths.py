"""Hookups and bypass plans -> the ways on which nothing is heard once the power fails, in the all-off state."""

from __future__ import annotations

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.least_silent_way import least_silent_ways, stops_sound
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.model.jacks import Port
from rigc.model.rig import BypassPlan, Rig
from rigc.model.ways.inner_ways import sinks
from rigc.record import Record


class SilentPath(Record):
    """Ways from an instrument to the jacks `ends` on which the same units pass nothing.

    `behind` are, one for each of these ends, the jacks at which the way goes on behind those units: the end itself, or what passes sound.
    `planned` where in each scenario the instrument is still heard somewhere: a bypass plan goes round all that is silent to one of its
    ends, or a way to one of them passes without power; else `ends` and `scenarios` are
    those for which none does, `scenarios` empty where it is so in all. `short` are plans that go round some of the units, with those that
    they leave in the way. `at_once` are the ranks of the ends that are there together, as another scenario has other amps: where a plan
    leads to one of each, the instrument is heard everywhere. `where` are the scenarios for which no plan does, also where these are all.
    """

    instrument: str
    ends: tuple[Port, ...]
    behind: tuple[Port, ...]
    units: tuple[str, ...]
    planned: bool
    scenarios: tuple[str, ...]
    short: tuple[tuple[BypassPlan, tuple[str, ...]], ...] = ()
    at_once: tuple[tuple[int, ...], ...] = ()
    where: tuple[str, ...] = ()


class _Arrival(Record):
    """At an end: the first jack behind the silent units, and whether a plan goes round them."""

    behind: Port
    planned: bool
    short: tuple[tuple[BypassPlan, tuple[str, ...]], ...] = ()


class SilentPaths(Record):
    """The ways that fall silent, and the units on any way that do not say what they do without power."""

    all: tuple[SilentPath, ...]
    unsure: tuple[str, ...]


def silent_paths(rig: Rig, ways: SoundWays) -> SilentPaths:
    """Ways on which the same units stop the sound are one."""
    found: dict[tuple[str, tuple[str, ...]], list[tuple[Hookup, dict[Port, _Arrival]]]] = {}
    unsure: dict[str, None] = {}
    for hookup in ways.hookups:
        here: dict[tuple[str, tuple[str, ...]], dict[Port, _Arrival]] = {}
        heard: set[str] = set()
        for source in hookup.sources:
            for end, way in least_silent_ways(rig, hookup, source, _ends(rig, hookup)).items():
                if any(_is_end(rig, port.thing) and port.thing != end.thing for port in way):
                    continue  # it is heard there, and what is sent on from there is that desk's
                names = dict.fromkeys(port.thing for port in way if port.thing in rig.units)
                stops = {name: stops_sound(rig.units[name]) for name in names}
                unsure.update(dict.fromkeys(name for name, each in stops.items() if each is None))
                silent = tuple(name for name, each in stops.items() if each)
                if not silent:
                    heard.update(() if None in stops.values() else (source.thing,))
                else:
                    planned = any(_goes_round(plan.start, plan.end, way, silent) for plan in rig.bypass_plans)
                    last = max(place for place, port in enumerate(way) if port.thing in silent)
                    behind = way[min(last + 1, len(way) - 1)]
                    here.setdefault((source.thing, silent), {})[end] = _Arrival(
                        behind, planned, _short(rig, way, silent)
                    )
                    heard.update((source.thing,) if planned else ())
        for key, ends in here.items():
            if key[0] in heard:
                ends = {end: each.replace(planned=True) for end, each in ends.items()}
            found.setdefault(key, []).append((hookup, ends))
    return SilentPaths(tuple(_path(*key, times) for key, times in found.items()), tuple(unsure))


def _path(instrument: str, silent: tuple[str, ...], times: list[tuple[Hookup, dict[Port, _Arrival]]]) -> SilentPath:
    unplanned = [(hookup, ends) for hookup, ends in times if not any(each.planned for each in ends.values())]
    ends = {end: arrival.behind for _, each in unplanned or times for end, arrival in each.items()}
    scenarios = dict.fromkeys(name for hookup, _ in unplanned for name in hookup.scenarios)
    partly = 0 < len(unplanned) < len(times)
    return SilentPath(
        instrument,
        tuple(ends),
        tuple(ends.values()),
        silent,
        not unplanned,
        tuple(scenarios) if partly else (),
        tuple(
            {
                plan.span.start: (plan, left)
                for _, each in unplanned
                for at in each.values()
                for plan, left in at.short
            }.values()
        ),
        tuple(dict.fromkeys(tuple(map(list(ends).index, each)) for _, each in unplanned)),
        tuple(scenarios),
    )


def _ends(rig: Rig, hookup: Hookup) -> list[Port]:
    """Where sound leaves the rig: amps, desks, and panel jacks that feed no lead. No lead past the board drives headphones."""
    heard = (unit for unit in rig.units.values() if unit.kind != "unit" and "headphones" not in unit.flags)
    amps = [port for unit in heard for port in amp_ends(unit, hookup.wired)]
    return [*amps, *(port for port in sinks(rig) if port.thing in rig.panels)]


def _is_end(rig: Rig, name: str) -> bool:
    return name in rig.units and rig.units[name].kind != "unit"


def _goes_round(start: Port, end: Port, way: tuple[Port, ...], silent: tuple[str, ...]) -> bool:
    """Whether a lead from one jack to another leaves out every silent unit of a way."""
    if start not in way or end not in way:
        return False
    places = [place for place, port in enumerate(way) if port.thing in silent]
    return way.index(start) < min(places) and max(places) < way.index(end)


def _short(rig: Rig, way: tuple[Port, ...], silent: tuple[str, ...]) -> tuple[tuple[BypassPlan, tuple[str, ...]], ...]:
    """The plans along a way that go round some of its silent units, with the others."""
    found = []
    for plan in rig.bypass_plans:
        if plan.start in way and plan.end in way:
            round_it = {port.thing for port in way[way.index(plan.start) + 1 : way.index(plan.end)]}
            left = tuple(name for name in silent if name not in round_it or name == plan.end.thing)
            found += [(plan, left)] if 0 < len(left) < len(silent) else []
    return tuple(found)


COMPUTE = silent_paths
