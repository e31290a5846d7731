"""Units with batteries -> how long each lasts: `kestrel.battery.capacity`, `.draws`, `.life`, `.shows`."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.power.show_length import Lasting, ShowLength
from rigc.model.rig import Rig
from rigc.model.things import Battery, Unit
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import stated
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.term import Traced, Unknown, known
from rigc.traced.units import HOURS, MILLIAMP_HOURS, MILLIAMPS


class BatteryLife(Lasting):
    """A unit's battery; `only` where it has no other supply. `capacity` in mAh, `draws` in mA."""

    unit: str
    kind: str
    only: bool
    capacity: AnyFigure
    draws: AnyFigure


class BatteryLives(Record):
    """Those of all units that are used, in order of declaration."""

    all: tuple[BatteryLife, ...]


def battery_lives(rig: Rig, show: ShowLength) -> BatteryLives:
    """One for each unit that states a battery."""
    return BatteryLives(tuple(_life(unit, unit.battery, show) for unit in used_units(rig) if unit.battery is not None))


def _life(unit: Unit, battery: Battery, show: ShowLength) -> BatteryLife:
    name = f"{unit.name}.battery"
    held = figure(
        f"{name}.capacity",
        stated(f"the capacity of the battery of {unit.name}", battery.capacity_mah),
        MILLIAMP_HOURS,
        rule=AS_STATED,
        source=STATED,
        label="capacity",
    )
    drawn = figure(
        f"{name}.draws",
        stated(f"what {unit.name} draws", unit.draws_ma),
        MILLIAMPS,
        rule=AS_STATED,
        source=STATED,
        label="draws",
    )
    life = figure(
        f"{name}.life", _hours(held, drawn), HOURS, rule="life = capacity / current", source=ARITHMETIC, label="life"
    )
    lasts = show.whole_shows(f"{name}.shows", life)
    lacking = "its capacity" if known(held) is None else "its current"
    return BatteryLife(life, lasts, show.hours, lacking, unit.name, battery.kind, battery.only, held, drawn)


def _hours(held: Traced, drawn: Traced) -> Traced:
    """h = mAh / mA; not known of a battery of which nothing is drawn."""
    if known(drawn) == 0:
        return Unknown(("anything that is drawn",), total((held, drawn)).how)
    hours: Traced = held / drawn
    return hours


COMPUTE = battery_lives
