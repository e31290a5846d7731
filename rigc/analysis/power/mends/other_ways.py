"""A unit -> the ways to feed it otherwise: from a free outlet, from its own and a second one, or where another unit moves for it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap, outlet_at, tap
from rigc.model.jacks import Port
from rigc.model.rig import Rig

Way = tuple[tuple[str, Tap], ...]
"""What each unit that is concerned then stands on, the unit itself first."""

Suits = Callable[[str, Tap], bool]
"""Whether a unit, by name, may stand on a tap."""


def other_ways(rig: Rig, power: PowerAssignment, unit: str, free: tuple[Port, ...], suits: Suits) -> Iterator[Way]:
    """Those that suit: first what the free outlets offer, alone or in parallel with the unit's own; then those that move another unit."""
    own = power.taps.get(unit)
    mine = own.outlets[0] if own is not None and len(own.outlets) == 1 else None
    for port in free:
        yield from (((unit, each),) for each in _single(rig, unit, port, suits) or _pair(rig, unit, mine, port, suits))
    for other, taken in power.taps.items():
        port = taken.outlets[0]
        if other == unit or len(taken.outlets) > 1 or power.loads[port].units != (other,):
            continue
        for here in _single(rig, unit, port, suits) or _pair(rig, unit, mine, port, suits):
            targets = (*free, mine) if mine is not None and mine not in here.outlets else free
            yield from (((unit, here), (other, there)) for to in targets for there in _single(rig, other, to, suits))


def _single(rig: Rig, unit: str, port: Port, suits: Suits) -> list[Tap]:
    """The unit on one outlet, at the first setting that suits."""
    outlet = outlet_at(rig, port)
    taps = [tap(rig, (port,), "", (rating,)) for rating in (outlet.ratings if outlet is not None else ())]
    return [each for each in taps if suits(unit, each)][:1]


def _pair(rig: Rig, unit: str, mine: Port | None, port: Port, suits: Suits) -> list[Tap]:
    """The unit on its outlet and a second one of the same supply, in parallel at one voltage."""
    if mine is None or mine.thing != port.thing or mine == port:
        return []
    one, other = outlet_at(rig, mine), outlet_at(rig, port)
    taps = [
        tap(rig, tuple(sorted((mine, port), key=lambda each: each.jack)), "parallel", (first, second))
        for first in (one.ratings if one is not None else ())
        for second in (other.ratings if other is not None else ())
        if first.volts.value == second.volts.value
    ]
    return [each for each in taps if suits(unit, each)][:1]
