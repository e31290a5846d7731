"""SupplyTotals -> what each supply takes from the mains, and what of it turns to heat inside."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.computations.supply_totals import SupplyTotal, SupplyTotals
from rigc.facts.fact import Fact
from rigc.facts.mains import EFFICIENCY_PCT, POWER_FACTOR
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Supply
from rigc.record import Record


class MainsLoad(Record):
    """One supply: what it gives in W, its efficiency in percent and its power factor, None where not known.

    `by_kind` names those of the two that are the usual ones of its kind, not stated. `incomplete`: a unit on it does
    not say what it draws.
    """

    supply: str
    given_w: float
    efficiency_pct: float | None
    power_factor: float | None
    by_kind: tuple[str, ...]
    assumed: bool
    incomplete: bool

    @property
    def watts(self) -> float | None:
        """What it takes, in W."""
        return None if not self.efficiency_pct else self.given_w / self.efficiency_pct * 100

    @property
    def volt_amperes(self) -> float | None:
        """What it takes, in VA."""
        return None if self.watts is None or not self.power_factor else self.watts / self.power_factor

    @property
    def heat_w(self) -> float | None:
        """What stays inside as heat, in W."""
        return None if self.watts is None else self.watts - self.given_w

    def milliamps(self, volts: float) -> float | None:
        """The current from mains of so many V, in mA."""
        return _milliamps(self.volt_amperes, volts)


class MainsLoads(Record):
    """All supplies in use, in order of declaration."""

    all: dict[str, MainsLoad]

    @property
    def watts(self) -> float | None:
        """The sum in W; None where one is not known."""
        return _sum(each.watts for each in self.all.values())

    @property
    def volt_amperes(self) -> float | None:
        """The sum in VA; None where one is not known."""
        return self.volt_amperes_of(self.all)

    @property
    def heat_w(self) -> float | None:
        """The sum of the heat in W; None where one is not known."""
        return _sum(each.heat_w for each in self.all.values())

    @property
    def given_w(self) -> float:
        """The sum of what the supplies give, in W."""
        return sum(each.given_w for each in self.all.values())

    def volt_amperes_of(self, supplies: Iterable[str]) -> float | None:
        """What some of them take together, in VA; None where one is not known."""
        return _sum(self.all[name].volt_amperes for name in supplies)

    def milliamps(self, volts: float) -> float | None:
        """The current of all of them from mains of so many V, in mA."""
        return _milliamps(self.volt_amperes, volts)

    def highest_amperes(self, scenario: Scenario) -> float | None:
        """The current of all of them at the lowest voltage of a scenario's mains, in A; None where either is not known."""
        mains = scenario.mains
        if self.volt_amperes is None or mains is None or not mains.low_v:
            return None
        return self.volt_amperes / mains.low_v


def mains_loads(rig: Rig, totals: SupplyTotals) -> MainsLoads:
    """P in = P out / efficiency, S = P in / power factor."""
    return MainsLoads({total.supply: _load(rig.supplies[total.supply], total) for total in totals.all})


def _load(supply: Supply, total: SupplyTotal) -> MainsLoad:
    kind = supply.technology or ""
    by_kind: list[str] = []
    efficiency = None if supply.efficiency is None else supply.efficiency.value
    if efficiency is None and kind in EFFICIENCY_PCT:
        efficiency = _usual(EFFICIENCY_PCT[kind], by_kind, "efficiency")
    factor = supply.power_factor
    if factor is None and kind in POWER_FACTOR:
        factor = _usual(POWER_FACTOR[kind], by_kind, "power factor")
    return MainsLoad(
        total.supply,
        total.drawn_w,
        efficiency,
        factor,
        tuple(by_kind),
        supply.efficiency is not None and supply.efficiency.assumed,
        bool(total.unknown),
    )


def _milliamps(volt_amperes: float | None, volts: float) -> float | None:
    return None if volt_amperes is None else volt_amperes / volts * 1000


def _sum(amounts: Iterable[float | None]) -> float | None:
    every = tuple(amounts)
    known = [each for each in every if each is not None]
    return sum(known) if len(known) == len(every) else None


def _usual(fact: Fact, by_kind: list[str], name: str) -> float:
    by_kind.append(name)
    return fact.value


COMPUTE = mains_loads
