"""Fuses and what is taken of the mains -> the fuses that carry less than their own thing takes."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.fuses import FittedFuse, Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primaries import Primaries
from rigc.model.rig import Rig, Scenario
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import Figure


class SmallFuse(Record):
    """A fuse, the first scenario in which it carries less, what arrives there in V and what its thing takes in A; in words what it takes, and where that
    is stated."""

    fitted: FittedFuse
    scenario: str
    volts: float
    amperes: float
    takes: str
    stated: Span | None


class SmallFuses(Record):
    """All of them, in the order of `Fuses`. Those of mains strips are no matter of what one thing takes."""

    all: tuple[SmallFuse, ...]


def small_fuses(rig: Rig, loads: MainsLoads, fuses: Fuses, primaries: Primaries) -> SmallFuses:
    """Of watts alone the least current is taken, that of a power factor of 1."""
    arriving = {(each.scenario, each.supply): each.volts[0] for each in primaries.all}
    found = (_small(rig, loads, fitted, arriving) for fitted in fuses.all if fitted.wanted)
    return SmallFuses(tuple(each for each in found if each is not None))


def _small(rig: Rig, loads: MainsLoads, fitted: FittedFuse, arriving: dict[tuple[str, str], float]) -> SmallFuse | None:
    amount, said, span = _taken(rig, loads, fitted.thing)
    for scenario in _where(rig, fitted) if amount else ():
        assert scenario.mains is not None
        volts = arriving.get((scenario.name, fitted.thing), scenario.mains.low_v)
        if amount / volts * 1000 > fitted.fuse.rating_ma.value * (1 + 1e-9):
            return SmallFuse(fitted, scenario.name, volts, amount / volts, said, span)
    return None


def _where(rig: Rig, fitted: FittedFuse) -> Iterator[Scenario]:
    for scenario in rig.scenarios.values():
        if scenario.mains is not None and (not fitted.scenarios or scenario.name in fitted.scenarios):
            yield scenario


def _taken(rig: Rig, loads: MainsLoads, name: str) -> tuple[float, str, Span | None]:
    """What a thing takes, in VA or W; 0 where that is not known."""
    thing = rig.units.get(name) or rig.instruments.get(name)
    stated = None if thing is None else thing.takes_va or thing.takes_w
    if stated is not None:
        return stated.value, stated.typed, stated.span
    load = loads.all.get(name)
    if load is None or not isinstance(load.volt_amperes, Figure):
        return 0.0, "", None
    return float(load.volt_amperes), f"{load.volt_amperes.text} VA", None


COMPUTE = small_fuses
