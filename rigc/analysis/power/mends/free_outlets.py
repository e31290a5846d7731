"""A unit -> the outlets that nobody uses and that would feed it as it is."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_bearing import bears
from rigc.analysis.feeds.outlet_fit import fits, resized, reversing
from rigc.analysis.feeds.outlet_sharing import positive
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap, outlet_at, tap
from rigc.analysis.feeds.series_midpoint import midpoints, shared
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit


def free_outlets(
    rig: Rig,
    power: PowerAssignment,
    unit: Unit,
    limits: LoadLimits,
) -> Iterator[Tap]:
    """Those within `limits`, in order of declaration, each at its first setting that fits; none that is reserved, at a series pair's
    midpoint, or on a common beside a unit of positive ground."""
    turns, sizes = unit.name in reversing(rig), unit.name in resized(rig)
    for port in unused_outlets(rig, power):
        outlet = outlet_at(rig, port)
        if outlet is None or positive_beside(rig, power, port, unit):
            continue
        ways = (tap(rig, (port,), "", (rating,)) for rating in outlet.ratings)
        good = next((way for way in ways if fits(unit, way, turns, sizes) and bears(way, (unit,), limits)), None)
        if good is not None:
            yield good


def positive_beside(rig: Rig, power: PowerAssignment, port: Port, unit: Unit) -> bool:
    """Whether others stand on the outlet's common, and one of them or the unit is of positive ground."""
    there = on_common(rig, power, port, unit)
    return bool(there) and any(positive(each) for each in (*there, unit))


def on_common(rig: Rig, power: PowerAssignment, port: Port, unit: Unit) -> tuple[Unit, ...]:
    """The other units on the outlet's common."""
    common = shared(rig, port)
    if common is None:
        return ()
    return tuple(
        rig.units[name]
        for name, way in power.taps.items()
        if name != unit.name and any(each.thing == port.thing and shared(rig, each) == common for each in way.outlets)
    )


def unused_outlets(rig: Rig, power: PowerAssignment) -> tuple[Port, ...]:
    """Every outlet that feeds nothing, is not reserved, and does not lie at a series pair's midpoint."""
    live = midpoints(rig, power.taps)
    return tuple(
        port
        for supply in rig.supplies.values()
        for outlet in supply.outlets
        if (port := Port(supply.name, outlet.name)) not in power.reserved and port not in live
        if (load := power.loads.get(port)) is None or not load.units
    )
