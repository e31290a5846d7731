"""A unit or a supply runs on its battery only; a warning where the battery does not last one show.

Why it matters: a plug in its input keeps it switched on: it drains from sound check to load-out, and is flat at the show. What a supply
takes of its battery is what it gives, and what is lost in it.
What to do: charge a supply's battery before the show, or carry a second one. Of a unit's, carry spare batteries and say so in a spares block by the name of the battery, write "unplug after the show" on the crew's card, or use a battery-clip lead. State in the rig
block how long your shows keep it plugged in, sound check included (`show 90 min`); else {power.SHOW_H} are taken.
Source: common practice, no source; life = capacity / current, of a supply energy × efficiency / power given, with
capacity and energy as stated (a maker's figure, of a battery that is new and full).
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.power.battery_lives import BatteryLife, BatteryLives
from rigc.analysis.power.pack_lives import PackLife, PackLives
from rigc.analysis.power.show_length import Lasting
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.model.rig import Rig
from rigc.model.ways.battery_rest import has_pack, has_switch

KIND = Kind(
    "battery-only",
    Level.REMARK,
    __doc__,
    "a unit or a supply has another source than its battery, or its battery lasts a show",
    "common practice, no source",
)


_MOST_CHANGES = 4  # batteries that anybody puts in during one show


def battery_only(rig: Rig, lives: BatteryLives, packs: PackLives, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each such unit and supply; of a unit that an outlet feeds all the same, `battery-left-in` tells."""
    for pack in packs.all:
        if pack.pack.only:
            yield _of_supply(pack)
    for life in lives.all:
        battery = (rig.instruments.get(life.unit) or rig.units[life.unit]).battery
        if life.only and battery is not None and power.of(life.unit) is None:
            yield KIND.at(
                battery.span,
                f"'{life.unit}' {_whose(rig, life)} on its battery only ({life.kind}), which drains while {_drains(rig, life)}; {_life(life)}",
                subject=(life.unit,),
                label="no other supply",
                numbers=_numbers(life),
                level=Level.WARNING if life.shows == 0 else None,
                help=_help(rig, life),
            )


def _of_supply(life: PackLife) -> Diagnostic:
    name, kind = life.supply, life.pack.kind
    return KIND.at(
        life.pack.span,
        f"'{name}' gives from its battery only ({kind}); {_life(life)}",
        subject=(name,),
        label="no other source",
        numbers=_numbers(life),
        level=Level.WARNING if life.shows == 0 else None,
        help=_supply_help(life),
    )


def _supply_help(life: PackLife) -> str:
    name = life.supply
    if life.shows is None:
        fact = _BLANKS.get(life.lacking)
        return (
            f"read it off the supply and write it in '{name}': `{fact}`" if fact else f"measure it with '{name}' full"
        )
    if life.shows == 0:
        return f"charge '{name}' or change it for another during the show, or take one of more energy"
    shows = "before each show" if life.shows == 1 else f"at least every {life.shows} shows"
    return f"charge '{name}' full {shows}"


_BLANKS = {
    "its energy": 'battery "KIND" ___ Wh only',
    "the voltage of its cells": 'battery "KIND" ___ mAh at ___ V only',
    "its efficiency": "efficiency ___ %",
}


def _life(life: Lasting) -> str:
    if life.hours is not None:
        if life.shows == 0:
            return f"it lasts {life.hours:.3g} h, less than a show of {life.show:.3g} h"
        plural = "" if life.shows == 1 else "s"
        return f"it lasts {decimals(life.hours)} h, {life.shows} show{plural} of {life.show:.3g} h"
    return f"how long is not known, for want of {life.lacking}"


def _numbers(life: Lasting) -> tuple[Number, ...]:
    return () if life.hours is None else (Number("life", life.hours, "h"), Number("show", life.show, "h"))


def _drains(rig: Rig, life: BatteryLife) -> str:
    return "it is on" if has_switch(rig, life.unit) else "a plug is in it"


def _whose(rig: Rig, life: BatteryLife) -> str:
    return "or its body-pack runs" if life.unit in rig.instruments and has_pack(rig, life.unit) else "runs"


def _help(rig: Rig, life: BatteryLife) -> str:
    ends = has_switch(rig, life.unit)
    if life.shows == 0:
        lead = (
            ""
            if ends or life.unit in rig.instruments
            else f"feed '{life.unit}' from a supply by a battery-clip lead, or "
        )
        if life.hours is not None and life.hours * _MOST_CHANGES < life.show:
            return f"{lead}use a battery of more charge; or check the charge and the current that '{life.unit}' states"
        return f"{lead}change its {life.kind} during the show"
    carried = any(spare.what == life.kind for spare in rig.spares)
    if ends and carried:
        return f"start with '{life.unit}' full, and switch it off after each show"
    if ends:
        return f"start with '{life.unit}' full, switch it off after each show, and carry a spare {life.kind}"
    return f"unplug '{life.unit}' after each show{'' if carried else f', and carry a spare {life.kind}'}"


CHECK = battery_only
