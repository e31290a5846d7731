"""How long a unit's battery lasts: `kestrel.battery.capacity`, `.draws`, `.life`, `.shows`; and `rig.show`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.battery_lives import BatteryLife, BatteryLives
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, ours, stated
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain
from rigc.facts.battery import SHOW_H
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, STATED, Reason

SHOW = "rig.show"


def battery_life(rig: Rig, lives: BatteryLives) -> Iterator[Reason]:
    """Four reasons for each unit with a battery, and one for the length of a show."""
    if lives.all:
        yield _show(rig)
    for life in lives.all:
        unit = rig.units[life.unit]
        capacity = unit.battery.capacity_mah if unit.battery is not None else None
        held = as_stated(
            f"{life.unit}.battery.capacity", f"the capacity of the battery of {life.unit}", capacity, "mAh"
        )
        drawn = as_stated(f"{life.unit}.battery.draws", f"what {life.unit} draws", unit.draws_ma, "mA")
        hours = _hours(life, held, drawn)
        yield from (held, drawn, hours, _shows(rig, life, hours))


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


def _show(rig: Rig) -> Reason:
    said = rig.head.show_min
    if said is not None:
        value = plain(said.value / 60)
        formula = f"{plain(said.value)} / 60 = {value}"
        rule = "minutes of a show / 60"
        return Reason(SHOW, value, "h", formula, (stated("how long a show is", said),), rule, STATED)
    rule = "where the rig says nothing, what is usual"
    return Reason(SHOW, plain(SHOW_H.value), "h", plain(SHOW_H.value), (ours(SHOW_H),), rule, SHOW_H.source)


def _shows(rig: Rig, life: BatteryLife, hours: Reason) -> Reason:
    name, rule = f"{life.unit}.battery.shows", "whole shows that it lasts"
    source = "arithmetic on stated values" if rig.head.show_min is not None else SHOW_H.source
    inputs = (derived("life", hours.value, "h", hours.name), derived("show", plain(life.show_h), "h", SHOW))
    if life.shows is None:
        return Reason(name, NOT_KNOWN, "", "for want of its life", inputs, rule, source)
    formula = f"{hours.value} / {plain(life.show_h)} → {life.shows}"
    return Reason(name, str(life.shows), "", formula, inputs, rule, source)


REASONS = battery_life
