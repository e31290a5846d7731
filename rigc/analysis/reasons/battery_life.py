"""How long a unit's battery lasts: `kestrel.battery.capacity`, `.draws`, `.life`, `.shows`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.battery_lives import BatteryLife, BatteryLives
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, ours
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain
from rigc.facts.battery import SHOW_H
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Reason


def battery_life(rig: Rig, lives: BatteryLives) -> Iterator[Reason]:
    """Four reasons for each unit with a battery."""
    for life in lives.all:
        unit = rig.units[life.unit]
        capacity = unit.battery.capacity_mah if unit.battery is not None else None
        held = as_stated(
            f"{life.unit}.battery.capacity", f"the capacity of the battery of {life.unit}", capacity, "mAh"
        )
        drawn = as_stated(f"{life.unit}.battery.draws", f"what {life.unit} draws", unit.draws_ma, "mA")
        hours = _hours(life, held, drawn)
        yield from (held, drawn, hours, _shows(life, hours))


def _hours(life: BatteryLife, held: Reason, drawn: Reason) -> Reason:
    name, rule = f"{life.unit}.battery.life", "life = capacity / current"
    inputs = (derived("capacity", held.value, "mAh", held.name), derived("draws", drawn.value, "mA", drawn.name))
    if life.hours is None:
        return Reason(
            name, NOT_KNOWN, "h", "for want of capacity or current", inputs, rule, "arithmetic on stated values"
        )
    value = decimals(life.hours)
    formula = f"{held.value} / {drawn.value} = {value}"
    return Reason(name, value, "h", formula, inputs, rule, "arithmetic on stated values")


def _shows(life: BatteryLife, hours: Reason) -> Reason:
    name, rule = f"{life.unit}.battery.shows", "whole shows that it lasts"
    inputs = (derived("life", hours.value, "h", hours.name), ours(SHOW_H))
    if life.shows is None:
        return Reason(name, NOT_KNOWN, "", "for want of its life", inputs, rule, SHOW_H.source)
    formula = f"{hours.value} / {plain(SHOW_H.value)} → {life.shows}"
    return Reason(name, str(life.shows), "", formula, inputs, rule, SHOW_H.source)


REASONS = battery_life
