"""Rig and power -> the units whose returns are one, and those of them whose shields short the supply that they share."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit


def shorted(rig: Rig, power: PowerAssignment) -> frozenset[str]:
    """The units of companies in which the ground of one is the + pole and that of another is not: their leads short the supply."""
    return frozenset(
        unit.name
        for _, units in companies(rig, power)
        if len({unit.ground is not None and unit.ground.value == "positive" for unit in units}) > 1
        for unit in units
    )


def companies(rig: Rig, power: PowerAssignment) -> Iterator[tuple[tuple[Port, ...], list[Unit]]]:
    """Outlets whose returns are one, with the units on them, where these are several."""
    groups: dict[tuple[str, str], list[Port]] = {}
    for port, load in power.loads.items():
        outlet = outlet_at(rig, port)
        if load.units and outlet is not None:
            name = f"common {outlet.common}" if outlet.common is not None else port.jack
            groups.setdefault((port.thing, name), []).append(port)
    seen = set()
    for ports in groups.values():
        names = tuple(dict.fromkeys(name for port in ports for name in power.loads[port].units))
        if len(names) > 1 and names not in seen:
            seen.add(names)
            yield tuple(ports), [rig.units[name] for name in names]
