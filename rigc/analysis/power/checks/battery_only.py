"""A unit runs on its battery only; a warning where the battery does not last one show.

Why it matters: a plug in its input keeps it switched on: it drains from sound check to load-out, and is flat at the show.
What to do: carry spare batteries, write "unplug after the show" on the crew's card, or use a battery-clip lead. State in the rig
block how long your shows keep it plugged in, sound check included (`show 90 min`); else {power.SHOW_H} are taken.
Source: common practice, no source; life = capacity / current, with the capacity as stated (a maker's figure).
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.power.battery_lives import BatteryLife, BatteryLives
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.model.rig import Rig
from rigc.traced.term import known

KIND = Kind(
    "battery-only",
    Level.REMARK,
    __doc__,
    "a unit has another supply than its battery, or its battery lasts a show",
    "common practice, no source",
)


def battery_only(rig: Rig, lives: BatteryLives, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each such unit; of one that an outlet feeds all the same, `battery-left-in` tells."""
    for life in lives.all:
        battery = rig.units[life.unit].battery
        if life.only and battery is not None and power.of(life.unit) is None:
            yield KIND.at(
                battery.span,
                f"'{life.unit}' runs on its battery only ({life.kind}), which drains while a plug is in it; {_life(life)}",
                subject=(life.unit,),
                label="no other supply",
                numbers=() if life.hours is None else (Number("life", life.hours, "h"), Number("show", life.show, "h")),
                level=Level.WARNING if life.shows == 0 else None,
                help=_help(life),
            )


def _life(life: BatteryLife) -> str:
    if life.hours is not None:
        if life.shows == 0:
            return f"it lasts {life.hours:.3g} h, less than a show of {life.show:.3g} h"
        plural = "" if life.shows == 1 else "s"
        return f"it lasts {decimals(life.hours)} h, {life.shows} show{plural} of {life.show:.3g} h"
    missing = "its capacity" if known(life.capacity) is None else "its current"
    return f"how long is not known, for want of {missing}"


def _help(life: BatteryLife) -> str:
    if life.shows == 0:
        return f"feed '{life.unit}' from a supply by a battery-clip lead, or change its {life.kind} during the show"
    return f"unplug '{life.unit}' after each show, and carry a spare {life.kind}"


CHECK = battery_only
