"""PowerAssignment -> what each supply gives in all, against its ceiling."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import percent_of
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.model.rig import Rig
from rigc.record import Record


class SupplyTotal(Record):
    """What is taken of a supply: mA and W summed over its outlets; `unknown` units' currents are not in the sums.

    `start_ma` and `start_w` count measured start-up currents in place of running ones. `ceiling` is in `unit` (`W` or `mA`); None where
    the source does not state one. Of its outlets `in_use` feed something, and `kept` feed nothing and are reserved.
    """

    supply: str
    drawn_ma: float
    drawn_w: float
    ceiling: float | None
    unit: str
    unknown: tuple[str, ...]
    start_ma: float
    start_w: float
    outlets: int
    in_use: int
    kept: int

    @property
    def started(self) -> float:
        """What is taken at switch-on, where all units start at once, in the ceiling's unit."""
        return self.start_ma if self.unit == "mA" else self.start_w

    @property
    def taken(self) -> float:
        """What is taken, in the ceiling's unit."""
        return self.drawn_ma if self.unit == "mA" else self.drawn_w

    @property
    def known_pct(self) -> float | None:
        """What is known to be taken, in percent of the ceiling; None where the source states none."""
        return percent_of(self.taken, self.ceiling)

    @property
    def start_pct(self) -> float | None:
        """The same at switch-on."""
        return percent_of(self.started, self.ceiling)

    @property
    def spare(self) -> int:
        """How many outlets feed nothing and are not kept for later."""
        return self.outlets - self.in_use - self.kept


class SupplyTotals(Record):
    """Totals of every supply in use, in order of declaration."""

    all: tuple[SupplyTotal, ...]


def supply_totals(rig: Rig, power: PowerAssignment) -> SupplyTotals:
    """Sums the loads of each supply; an AC outlet's volt-amperes count as W."""
    totals = []
    for name in dict.fromkeys(port.thing for port in power.loads):
        supply = rig.supplies[name]
        loads = [load for port, load in power.loads.items() if port.thing == name]
        ceiling = supply.ceiling_w or supply.ceiling_ma
        totals.append(
            SupplyTotal(
                name,
                sum(load.known_ma for load in loads),
                sum(load.known_ma * load.volts for load in loads) / 1000,
                None if ceiling is None else ceiling.value,
                "mA" if supply.ceiling_w is None and supply.ceiling_ma is not None else "W",
                tuple(dict.fromkeys(unit for load in loads for unit in load.unknown)),
                sum(load.start_ma for load in loads),
                sum(load.start_ma * load.volts for load in loads) / 1000,
                len(loads),
                sum(bool(load.units) for load in loads),
                sum(not load.units and load.outlet in power.reserved for load in loads),
            )
        )
    return SupplyTotals(tuple(totals))


COMPUTE = supply_totals
