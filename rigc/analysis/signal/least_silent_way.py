"""Hookup and two jacks -> the way between them, with all loops out, on which the fewest units stop the sound without power."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from heapq import heappop, heappush

from rigc.analysis.signal.sound_ways import Hookup
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.inner_ways import bypass_ways

_Cost = tuple[int, int, int]


def stops_sound(unit: Unit) -> bool | None:
    """Whether it may pass nothing without power, as one that latches does if it was on; None where it takes power and does
    not say."""
    if unit.unpowered is not None:
        return unit.unpowered.value in ("mutes", "latches")
    takes = unit.inlet is not None or unit.volts is not None or unit.battery is not None
    return None if takes and unit.kind == "unit" else False


def least_silent_ways(rig: Rig, hookup: Hookup, source: Port, ends: Iterable[Port]) -> dict[Port, tuple[Port, ...]]:
    """The jacks passed from a source to each of these ends that it reaches, both included, in the order of `ends`."""
    onward = _all_off(rig, hookup)
    best: dict[Port, tuple[_Cost, Port | None]] = {source: ((0, 0, 0), None)}
    heap: list[tuple[_Cost, int, Port]] = [((0, 0, 0), 0, source)]
    count = 0
    while heap:
        cost, _, port = heappop(heap)
        if cost > best[port][0]:
            continue
        for after in onward.get(port, ()):
            there = _further(rig, cost, port, after)
            if after not in best or there < best[after][0]:
                count += 1
                best[after] = (there, port)
                heappush(heap, (there, count, after))
    return {end: tuple(reversed([*_back(best, end)])) for end in ends if end in best}


def _all_off(rig: Rig, hookup: Hookup) -> dict[Port, list[Port]]:
    """Where sound goes on with all loops of switchers out; a blender's dry way is what is left of it."""
    out = {lead.start.thing for lead in hookup.leads if lead.start.thing in rig.units}
    out = {name for name in out if rig.units[name].kind == "unit" and rig.units[name].loops}
    ways = [*((lead.start, lead.end) for lead in hookup.leads)]
    ways += [way for way in hookup.inner if way[0].thing not in out]
    ways += [way for name in sorted(out) for way in bypass_ways(rig.units[name])]
    onward: dict[Port, list[Port]] = {}
    for start, end in ways:
        onward.setdefault(start, []).append(end)
    return onward


def _further(rig: Rig, cost: _Cost, port: Port, after: Port) -> _Cost:
    """Silent units count most, then units that do not say, then the number of jacks."""
    silent, unsure, steps = cost
    unit = rig.units.get(after.thing)
    if unit is not None and after.thing != port.thing:
        stops = stops_sound(unit)
        silent, unsure = silent + (stops is True), unsure + (stops is None)
    return silent, unsure, steps + 1


def _back(best: dict[Port, tuple[_Cost, Port | None]], port: Port) -> Iterator[Port]:
    here: Port | None = port
    while here is not None:
        yield here
        here = best[here][1]
