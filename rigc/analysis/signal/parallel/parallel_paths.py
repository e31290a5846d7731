"""Hookups -> every place where sound goes side by side: blends and other joins, an amp's own loop, several amps."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.parallel.leg import Leg, leg
from rigc.analysis.signal.parallel.parallel import AMP_LOOP, AMPS, DESK, JOIN, LowNote, Parallel
from rigc.analysis.signal.parallel.parallel_figures import ParallelFigures, parallel_figures
from rigc.analysis.signal.side_by_side import Meeting, first_way, meetings
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.model.ways.inner_ways import main_inputs
from rigc.model.ways.jack_use import joined_inputs
from rigc.model.wishes import BlendPath
from rigc.record import Record
from rigc.source import Span
from rigc.traced.given import stated


class ParallelPaths(Record):
    """All such places, in the order in which sound comes to them, and the figures of each."""

    all: tuple[Parallel, ...]
    figures: tuple[ParallelFigures, ...]


def parallel_paths(rig: Rig, ways: SoundWays) -> ParallelPaths:
    """Looks at each hookup; what is equal in several is one."""
    found: dict[Parallel, list[Hookup]] = {}
    for hookup in ways.hookups:
        for each in (*_joins(rig, hookup), *_amp_loops(rig, hookup), *_together(rig, hookup)):
            found.setdefault(each, []).append(hookup)
    every = {name for hookup in ways.hookups for name in hookup.scenarios}
    paths = tuple(_where(rig, each, hookups, every) for each, hookups in found.items())
    figures = (parallel_figures(rig, f"paths-{number}", each) for number, each in enumerate(paths, 1))
    return ParallelPaths(paths, tuple(figures))


def _where(rig: Rig, paths: Parallel, hookups: list[Hookup], every: set[str]) -> Parallel:
    scenarios = dict.fromkeys(name for hookup in hookups for name in hookup.scenarios)
    heard = dict.fromkeys(source.thing for hookup in hookups for source in hookup.sources)
    made: Parallel = paths.replace(
        scenarios=() if set(scenarios) == every else tuple(scenarios),
        notes=tuple(_lowest(rig.instruments[name]) for name in heard),
    )
    return made


def _lowest(instrument: Instrument) -> LowNote:
    stated = instrument.lowest_note_hz
    return LowNote(instrument.name, LOWEST_NOTE_HZ.value if stated is None else stated.value, stated is not None)


def _joins(rig: Rig, hookup: Hookup) -> Iterator[Parallel]:
    joined = joined_inputs(rig)
    for meeting in meetings(hookup.onward, hookup.sources):
        if meeting.join in joined:
            continue  # nothing sums there: a mistake of its own
        passed = [tuple(dict.fromkeys(port.thing for port in way)) for way in meeting.ways]
        shared = set(passed[0]).intersection(*passed[1:])
        ways = {
            tuple(name for name in names if name not in shared): way
            for names, way in zip(passed, meeting.ways, strict=True)
        }
        if len(ways) > 1:
            span = next((blend.span for blend in rig.blends if blend.unit == meeting.join.thing), None)
            legs = _legs(rig, meeting, ways)
            if len(legs) < 2:
                continue
            yield Parallel(
                JOIN, meeting.join.thing, legs, None, (), (), span or rig.things[meeting.join.thing].declared
            )


def _legs(rig: Rig, meeting: Meeting, ways: dict[tuple[str, ...], tuple[Port, ...]]) -> tuple[Leg, ...]:
    """The legs, dry ones first; a blend says which is which, and a share of nothing is no leg."""
    found = []
    for names, way in ways.items():
        path = _blended(rig, way[-2], meeting.join)
        through = f"through {', '.join(names)}" if names else "straight on"
        label = through if path is None else f"wet {through}" if path.wet else "dry"
        share = None if path is None else stated(f"share of {label}", path.share)
        if share == 0:
            continue
        found.append(leg(rig, label, names, path is not None and path.wet, share, path is not None and path.inverted))
    return tuple(sorted(found, key=lambda each: (each.wet, len(each.things))))


def _blended(rig: Rig, last: Port, join: Port) -> BlendPath | None:
    """The stated path of a blend whose sound comes in at a jack."""
    unit = rig.units.get(join.thing)
    if unit is None:
        return None
    for path in (path for blend in rig.blends if blend.unit == unit.name for path in blend.paths):
        loop = unit.loop(path.loop) if path.loop is not None else None
        if last == Port(unit.name, loop.back) if loop is not None else last in main_inputs(unit):
            return path
    return None


def _amp_loops(rig: Rig, hookup: Hookup) -> Iterator[Parallel]:
    for unit in rig.units.values():
        for loop in unit.loops if unit.kind == "amp" else ():
            way = first_way(hookup.onward, Port(unit.name, loop.send), Port(unit.name, loop.back))
            if way is not None:
                names = dict.fromkeys(port.thing for port in way if port.thing != unit.name)
                wet = leg(rig, f"loop through {', '.join(names)}", names, loop.mix == "parallel")
                legs = (wet,) if loop.mix == "series" else (leg(rig, "inside the amp", ()), wet)
                yield Parallel(AMP_LOOP, unit.name, legs, loop.mix, (), (), loop.span)


def _together(rig: Rig, hookup: Hookup) -> Iterator[Parallel]:
    """Each instrument with all the amps that it reaches at once, and with all the inputs of each desk."""
    amps = sorted((unit for unit in rig.units.values() if unit.kind == "amp"), key=lambda unit: unit.role == "wet")
    groups = [(AMPS, {unit.name: amp_ends(unit, hookup.wired) for unit in amps})]
    for desk in (unit for unit in rig.units.values() if unit.kind == "desk"):
        groups.append((DESK, {str(port): [port] for port in amp_ends(desk, hookup.wired)}))
    for source in hookup.sources:
        for kind, ends in groups:
            found = {name: way for name, ports in ends.items() if (way := _way_to(hookup, source, ports))}
            if len(found) > 1:
                yield Parallel(kind, ", ".join(found), _ending(rig, found), None, (), (), _declared(rig, ends, found))


def _way_to(hookup: Hookup, source: Port, ends: list[Port]) -> tuple[str, ...]:
    """The things on the shortest way to one of several jacks; none where there is no way."""
    ways = [way for port in ends if (way := first_way(hookup.onward, source, port)) is not None]
    return tuple(dict.fromkeys(port.thing for port in min(ways, key=len))) if ways else ()


def _ending(rig: Rig, found: dict[str, tuple[str, ...]]) -> tuple[Leg, ...]:
    shared = set.intersection(*(set(way) for way in found.values()))
    return tuple(
        leg(
            rig, name, (each for each in way if each not in shared), name in rig.units and rig.units[name].role == "wet"
        )
        for name, way in found.items()
    )


def _declared(rig: Rig, ends: dict[str, list[Port]], found: dict[str, tuple[str, ...]]) -> Span:
    return rig.units[ends[next(iter(found))][0].thing].declared


COMPUTE = parallel_paths
