"""Lead drops -> the noise that units on one outlet can put on each other's ground through what they share of its return:
`mill5.o2.return.current`, `.length`, `.mohm`, `.noise`."""

from __future__ import annotations

from typing import TypeVar

from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.y_stretches import y_stretches
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC, PRACTICE
from rigc.traced.term import Traced
from rigc.traced.units import FINE_MILLIAMPS, FINE_MILLIVOLTS, MILLIOHMS, NEAREST_TENTH

_OHM = "physics: Ohm's law"
N = TypeVar("N", float, Traced)


class SharedReturn(Record):
    """An outlet with several units: the `current` of all together in mA, through one conductor of the shorter leg, which is
    `length` mm and resists `mohm`; `noise` in mV is the most that the currents raise it.

    Lacking where a leg's length, conductor or current is not known.
    """

    outlet: Port
    units: tuple[str, ...]
    marks: tuple[str, ...]
    current: AnyFigure
    length: AnyFigure
    mohm: AnyFigure
    noise: AnyFigure


class SharedReturns(Record):
    """All of them, in the order of the outlets' first leads."""

    all: tuple[SharedReturn, ...]


def shared_returns(drops: LeadDrops) -> SharedReturns:
    """One for each outlet on which several leads stand. Where the legs part is not stated: the shorter leg may be shared whole."""
    legs: dict[Port, list[LeadDrop]] = {}
    for drop in drops.all.values():
        legs.setdefault(drop.outlet, []).append(drop)
    return SharedReturns(tuple(_shared(outlet, each) for outlet, each in legs.items() if len(each) > 1))


def noise_mv(milliamps: N, milliohm: N) -> N:
    """What currents raise a return: i × R, in mV. No more of it is heard than the currents vary. Of terms a term."""
    noise: N = milliamps * milliohm / 1000
    return noise


def _shared(outlet: Port, legs: list[LeadDrop]) -> SharedReturn:
    name = f"{outlet}.return"
    trunk = next(iter(y_stretches(legs) or ()), None)
    lacking: Traced = total(leg.loop for leg in legs)
    current = figure(
        f"{name}.current",
        total(leg.current for leg in legs),
        FINE_MILLIAMPS,
        rule="the currents of all its units together",
        source=ARITHMETIC,
        label="current",
    )
    length = figure(
        f"{name}.length",
        lacking if trunk is None else trunk.length_mm,
        NEAREST_TENTH,
        rule="where the legs part is not stated: the shorter one may be shared whole",
        source=PRACTICE,
        label="length",
    )
    mohm = figure(
        f"{name}.mohm",
        lacking if trunk is None else length / 1000 * trunk.ohm_per_km,
        MILLIOHMS,
        rule="one conductor of what all legs share, of the thinnest of their wires",
        source=_OHM,
        label="conductor",
    )
    return SharedReturn(
        outlet,
        tuple(leg.unit for leg in legs),
        tuple(leg.mark for leg in legs),
        current,
        length,
        mohm,
        figure(
            f"{name}.noise",
            noise_mv(current, mohm),
            FINE_MILLIVOLTS,
            rule="noise = current × resistance, at most: no more of it is heard than the currents vary",
            source=_OHM,
        ),
    )


COMPUTE = shared_returns
