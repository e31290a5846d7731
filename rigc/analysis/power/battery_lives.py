"""Units, instruments and sources with batteries -> how long each lasts: `kestrel.battery.capacity`, `.draws`, `.life`, `.shows`."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.power.show_length import Lasting, ShowLength
from rigc.model.rig import Rig
from rigc.model.things import Battery, Instrument, Unit
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import stated
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.term import Traced, Unknown, known
from rigc.traced.units import HOURS, MILLIAMP_HOURS, MILLIAMPS


class BatteryLife(Lasting):
    """The battery of a unit, or of an instrument or source or its body-pack; `only` where it has no other supply. `capacity` in mAh,
    `draws` in mA."""

    unit: str
    kind: str
    only: bool
    capacity: AnyFigure
    draws: AnyFigure


class BatteryLives(Record):
    """Those of all units that are used, in order of declaration, then those of instruments and sources."""

    all: tuple[BatteryLife, ...]


def battery_lives(rig: Rig, show: ShowLength) -> BatteryLives:
    """One for each that states a battery."""
    holding: tuple[Unit | Instrument, ...] = (*used_units(rig), *rig.instruments.values())
    return BatteryLives(tuple(_life(each, each.battery, show) for each in holding if each.battery is not None))


def _life(unit: Unit | Instrument, battery: Battery, show: ShowLength) -> BatteryLife:
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
    only = battery.only or (isinstance(unit, Instrument) and not unit.mains)  # none of them has an outlet
    lacking = "its capacity" if known(held) is None else "its current"
    return BatteryLife(life, lasts, show.hours, lacking, unit.name, battery.kind, only, held, drawn)


def _hours(held: Traced, drawn: Traced) -> Traced:
    """h = mAh / mA; not known of a battery of which nothing is drawn."""
    if known(drawn) == 0:
        return Unknown(("anything that is drawn",), total((held, drawn)).how)
    hours: Traced = held / drawn
    return hours


COMPUTE = battery_lives
