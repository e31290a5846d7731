"""Lead drops -> the noise that units on one outlet can put on each other's ground through what they share of its return."""

from __future__ import annotations

from rigc.analysis.computations.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.y_stretches import y_stretches
from rigc.model.jacks import Port
from rigc.record import Record


class SharedReturn(Record):
    """An outlet with several units: `ma` all together, through one conductor of the shorter leg (`length_mm`, `ohm`).

    None where a leg's length, conductor or current is not known.
    """

    outlet: Port
    units: tuple[str, ...]
    marks: tuple[str, ...]
    ma: float | None
    length_mm: float | None
    ohm: float | None

    @property
    def millivolts(self) -> float | None:
        """The most that the currents raise the shared return: i × R. No more of it is heard than the currents vary."""
        return None if self.ma is None or self.ohm is None else self.ma * self.ohm


class SharedReturns(Record):
    """All of them, in the order of the outlets' first leads."""

    all: tuple[SharedReturn, ...]


def shared_returns(drops: LeadDrops) -> SharedReturns:
    """One for each outlet on which several leads stand. Where the legs part is not stated: the shorter leg may be shared whole."""
    legs: dict[Port, list[LeadDrop]] = {}
    for drop in drops.all.values():
        legs.setdefault(drop.outlet, []).append(drop)
    return SharedReturns(tuple(_shared(outlet, each) for outlet, each in legs.items() if len(each) > 1))


def _shared(outlet: Port, legs: list[LeadDrop]) -> SharedReturn:
    currents = [leg.ma for leg in legs if leg.ma is not None]
    trunk = next(iter(y_stretches(legs) or ()), None)
    return SharedReturn(
        outlet,
        tuple(leg.unit for leg in legs),
        tuple(leg.mark for leg in legs),
        sum(currents) if len(currents) == len(legs) else None,
        None if trunk is None else trunk.length_mm,
        None if trunk is None else trunk.ohm,
    )


COMPUTE = shared_returns
