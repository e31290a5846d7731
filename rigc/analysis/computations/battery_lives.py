"""Units with batteries -> how long each lasts."""

from __future__ import annotations

from rigc.analysis.power.used_units import used_units
from rigc.facts.battery import SHOW_H
from rigc.model.rig import Rig
from rigc.record import Record


class BatteryLife(Record):
    """A unit's battery; `only` where it has no other supply. Capacity in mAh and current in mA, None where not stated.

    `show_h` is how long a show keeps it working, in h, as the rig states it or as is usual.
    """

    unit: str
    kind: str
    only: bool
    capacity_mah: float | None
    draws_ma: float | None
    assumed: bool
    show_h: float

    @property
    def hours(self) -> float | None:
        """h = mAh / mA."""
        return None if self.capacity_mah is None or not self.draws_ma else self.capacity_mah / self.draws_ma

    @property
    def shows(self) -> int | None:
        """Whole shows that it lasts."""
        return None if self.hours is None else int(self.hours / self.show_h + 1e-9)


class BatteryLives(Record):
    """Those of all units that are used, in order of declaration, and the length of a show in h."""

    all: tuple[BatteryLife, ...]
    show_h: float


def battery_lives(rig: Rig) -> BatteryLives:
    """One for each unit that states a battery."""
    found = []
    show_h = SHOW_H.value if rig.head.show_min is None else rig.head.show_min.value / 60
    for unit in used_units(rig):
        if unit.battery is not None:
            capacity, draws = unit.battery.capacity_mah, unit.draws_ma
            found.append(
                BatteryLife(
                    unit.name,
                    unit.battery.kind,
                    unit.battery.only,
                    None if capacity is None else capacity.value,
                    None if draws is None else draws.value,
                    any(fact is not None and fact.assumed for fact in (capacity, draws)),
                    show_h,
                )
            )
    return BatteryLives(tuple(found), show_h)


COMPUTE = battery_lives
