"""A unit runs on its battery only.

Why it matters: a plug in its input keeps it switched on: it drains from sound check to load-out, and is flat at the show.
What to do: carry spare batteries, write "unplug after the show" on the crew's card, or use a battery-clip lead.
Source: common practice, no source; life = capacity / current, with the capacity as stated (a maker's figure).
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.battery_lives import BatteryLife, BatteryLives
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.facts.battery import SHOW_H
from rigc.model.rig import Rig

KIND = Kind(
    "battery-only",
    Level.REMARK,
    __doc__,
    "a unit has another supply than its battery",
    "common practice, no source",
)


def battery_only(rig: Rig, lives: BatteryLives) -> Iterator[Diagnostic]:
    """One remark for each such unit."""
    for life in lives.all:
        battery = rig.units[life.unit].battery
        if life.only and battery is not None:
            yield KIND.at(
                battery.span,
                f"'{life.unit}' runs on its battery only ({life.kind}), which drains while a plug is in it; {_life(life)}",
                subject=(life.unit,),
                label="no other supply",
                numbers=() if life.hours is None else (Number("life", life.hours, "h"),),
                help=f"unplug '{life.unit}' after each show, and {_spare(life)}",
            )


def _life(life: BatteryLife) -> str:
    if life.hours is not None:
        plural = "" if life.shows == 1 else "s"
        return f"it lasts {decimals(life.hours)} h, {life.shows} show{plural} of {SHOW_H.value:g} h"
    missing = "its capacity" if life.capacity_mah is None else "its current"
    return f"how long is not known, for want of {missing}"


def _spare(life: BatteryLife) -> str:
    return (
        f"carry a spare {life.kind}"
        if life.shows is None or life.shows >= 1
        else f"fit a fresh {life.kind} before each"
    )


CHECK = battery_only
