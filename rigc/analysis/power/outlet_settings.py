"""Rig -> the setting of each outlet that a stated feed uses."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from rigc.analysis.computations.load_limits import exceeds
from rigc.analysis.power.outlet_fit import takes_current, takes_voltage
from rigc.analysis.power.power_tap import Tap, outlet_at, tap
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Rating, Unit
from rigc.model.wishes import Feed


def outlet_settings(rig: Rig) -> dict[Port, Rating]:
    """The rating at which each outlet of a stated feed stands.

    It is the one stated (`at 12 V`); else the one that suits all units on the outlet, nearest to what they need; else
    the one at which the outlet leaves its maker. Feeds that name no outlet that exists are passed over.
    """
    found: dict[Port, Rating] = {}
    feeds = sorted(rig.power.feeds, key=lambda feed: feed.volts is None)
    units = _units_on(rig)
    for feed in feeds:
        ports = tuple(port for port in feed.outlets if _rated(rig, port))
        if ports and len(ports) == len(feed.outlets):
            together = tuple(dict.fromkeys(unit for port in ports for unit in units[port]))
            best = min(_ways(rig, feed, ports, found), key=lambda way: _unsuited(way, together))
            found.update(zip(ports, best.settings, strict=True))
    return found


def _ways(rig: Rig, feed: Feed, ports: tuple[Port, ...], found: dict[Port, Rating]) -> Iterator[Tap]:
    choices = [(found[port],) if port in found else _settings(rig, feed, port) for port in ports]
    return (tap(rig, ports, feed.how, settings) for settings in product(*choices))


def _settings(rig: Rig, feed: Feed, port: Port) -> tuple[Rating, ...]:
    ratings = _rated(rig, port)
    stated = tuple(each for each in ratings if feed.volts is not None and each.volts.value == feed.volts.value)
    return stated or ratings


def _rated(rig: Rig, port: Port) -> tuple[Rating, ...]:
    outlet = outlet_at(rig, port)
    return () if outlet is None else outlet.ratings


def _units_on(rig: Rig) -> dict[Port, list[Unit]]:
    found: dict[Port, list[Unit]] = {}
    for feed in rig.power.feeds:
        for port in feed.outlets:
            found.setdefault(port, []).extend(rig.units[name] for name in feed.units if name in rig.units)
    return found


def _unsuited(way: Tap, units: tuple[Unit, ...]) -> tuple[int, int, bool, float]:
    wrong_kind = sum(takes_current(unit, way) is False for unit in units)
    wrong_volts = sum(takes_voltage(unit, way) is False for unit in units)
    drawn = sum(unit.draws_ma.value for unit in units if unit.draws_ma is not None)
    away = sum(abs(way.volts - unit.volts.value) for unit in units if unit.volts is not None)
    return wrong_kind, wrong_volts, exceeds(drawn, 100, way.limit_ma), away
