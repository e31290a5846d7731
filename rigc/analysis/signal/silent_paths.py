"""Hookups and bypass plans -> the ways on which nothing is heard once the power fails, in the all-off state."""

from __future__ import annotations

import itertools
from collections.abc import Iterable

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.least_silent_way import least_silent_ways, stops_sound
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.model.jacks import Port
from rigc.model.rig import BypassPlan, Rig
from rigc.model.ways.inner_ways import sinks
from rigc.record import Record

Stretches = tuple[tuple[Port, Port], ...]
"""From where to where a way is silent."""


class SilentPath(Record):
    """Ways from an instrument to the jacks `ends` on which the same units pass nothing.

    `behind` are, one for each of these ends, the jacks at which the way goes on behind those units: the end itself, or what passes sound.
    `planned` where in each scenario the instrument is still heard somewhere: a bypass plan goes round all that is silent to one of its
    ends, or a way to one of them passes without power; else `ends` and `scenarios` are
    those for which none does, `scenarios` empty where it is so in all. `short` are plans that go round some of the units, with those that
    they leave in the way. `at_once` are the ranks of the ends that are there together, as another scenario has other amps: where a plan
    leads to one of each, the instrument is heard everywhere. `where` are the scenarios for which no plan does, also where these are all.
    `across` are, one for each of the ends, the stretches to go round one by one where the way passes the end's own amp before it is
    there, as through a loop: a guitar does not drive what stands behind it.
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
    across: tuple[Stretches, ...] = ()


class _Arrival(Record):
    """At an end: the first jack behind the silent units, and whether plans go round them."""

    behind: Port
    planned: bool
    across: Stretches
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
                    planned = _gets_through(rig.bypass_plans, way, silent)
                    last = max(place for place, port in enumerate(way) if port.thing in silent)
                    behind = way[min(last + 1, len(way) - 1)]
                    here.setdefault((source.thing, silent), {})[end] = _Arrival(
                        behind, planned, _across(rig, end, way, silent), _short(rig, way, silent)
                    )
                    heard.update((source.thing,) if planned else ())
        for key, ends in here.items():
            if key[0] in heard:
                ends = {end: each.replace(planned=True) for end, each in ends.items()}
            found.setdefault(key, []).append((hookup, ends))
    return SilentPaths(tuple(_path(*key, times) for key, times in found.items()), tuple(unsure))


def _path(instrument: str, silent: tuple[str, ...], times: list[tuple[Hookup, dict[Port, _Arrival]]]) -> SilentPath:
    unplanned = [(hookup, ends) for hookup, ends in times if not any(each.planned for each in ends.values())]
    arrivals = {end: arrival for _, each in unplanned or times for end, arrival in each.items()}
    ends = tuple(arrivals)
    scenarios = dict.fromkeys(name for hookup, _ in unplanned for name in hookup.scenarios)
    partly = 0 < len(unplanned) < len(times)
    return SilentPath(
        instrument,
        ends,
        tuple(each.behind for each in arrivals.values()),
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
        tuple(dict.fromkeys(tuple(map(ends.index, each)) for _, each in unplanned)),
        tuple(scenarios),
        tuple(each.across for each in arrivals.values()),
    )


def _ends(rig: Rig, hookup: Hookup) -> list[Port]:
    """Where sound leaves the rig: amps, desks, and panel jacks that feed no lead. No lead past the board drives headphones."""
    heard = (unit for unit in rig.units.values() if unit.kind != "unit" and "headphones" not in unit.flags)
    amps = [port for unit in heard for port in amp_ends(unit, hookup.wired)]
    return [*amps, *(port for port in sinks(rig) if port.thing in rig.panels)]


def _is_end(rig: Rig, name: str) -> bool:
    return name in rig.units and rig.units[name].kind != "unit"


def _gets_through(plans: Iterable[BypassPlan], way: tuple[Port, ...], silent: tuple[str, ...]) -> bool:
    """Whether leads past what is silent, one after the other, bring a way from its beginning to its end."""
    jumps = [(way.index(each.start), way.index(each.end)) for each in plans if each.start in way and each.end in way]
    reached = {0}
    for at in range(len(way)):
        if at in reached and way[at].thing not in silent:
            reached |= {at + 1, *(to for start, to in jumps if start == at and to > at)}
    return len(way) - 1 in reached and way[-1].thing not in silent


def _across(rig: Rig, end: Port, way: tuple[Port, ...], silent: tuple[str, ...]) -> Stretches:
    """The silent stretches between the jacks of the end's own amp, that no plan goes round; none where it is passed but once."""
    stops = [0, *(place for place, port in enumerate(way) if port.thing == end.thing)]
    if len(stops) < 3:
        return ()
    stretches = [(way[one], way[other]) for one, other in itertools.pairwise(stops)]
    return tuple(
        (start, to)
        for start, to in stretches
        if not _gets_through(rig.bypass_plans, way[way.index(start) : way.index(to) + 1], silent)
    )


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
