"""An unregulated supply feeds a unit that does not take the voltage that it gives without load.

Why it matters: off load an unregulated supply gives 1.3 to 1.5 times its nominal voltage, and a unit of a few milliamperes
is hardly a load: a 9 V brick gives it 12 to 14 V, and hum besides.
What to do: use a regulated supply, or measure the supply with this unit on it and take the unit only if it accepts that.
Source: 1.3 to 1.5 from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import exceeds
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed
from rigc.facts.mains import OFF_LOAD
from rigc.model.rig import Rig

KIND = Kind(
    "unregulated-supply",
    Level.WARNING,
    __doc__,
    f"a unit on an unregulated outlet accepts {OFF_LOAD} times its voltage",
    "trade figure, from memory",
)


def unregulated_supply(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each unit; can't-check where it does not say how much voltage it accepts."""
    for feed in power.feeds:
        if any(rig.supplies[port.thing].technology == "unregulated" for port in feed.outlets):
            yield from _judged(rig, feed)
    silent: dict[str, list[str]] = {}
    for feed in power.feeds:
        for name in dict.fromkeys(port.thing for port in feed.outlets):
            if rig.supplies[name].technology is None and not _takes_anyway(rig, feed):
                silent.setdefault(name, []).append(feed.unit)
    for name, units in silent.items():
        yield KIND.cant_check(
            rig.supplies[name].declared,
            f"'{name}' does not say of which kind it is; if it is unregulated, it may give {listed(units)} too much",
            subject=(name,),
            help=f"read it off the supply and write it in '{name}': switch-mode, linear, unregulated or winding",
        )


def _takes_anyway(rig: Rig, feed: Supplied) -> bool:
    """Whether a unit takes what an unregulated outlet gives without load, or AC, which is not regulated at all."""
    high = rig.units[feed.unit].accepts_high_v
    return feed.current != "dc" or (high is not None and not exceeds(feed.volts * OFF_LOAD.value, 100, high.value))


def _judged(rig: Rig, feed: Supplied) -> Iterator[Diagnostic]:
    unit, supply = rig.units[feed.unit], rig.supplies[feed.outlets[0].thing]
    most = feed.volts * OFF_LOAD.value
    if unit.accepts_high_v is None:
        yield KIND.cant_check(
            unit.declared,
            f"'{unit.name}' is on the unregulated '{supply.name}' and does not say what voltage it accepts; "
            f"up to {most:g} V may come",
            subject=(unit.name,),
            help=f"write `accepts` in '{unit.name}', from its leaflet",
        )
    elif exceeds(most, 100, unit.accepts_high_v.value):
        yield KIND.at(
            feed.span,
            f"'{supply.name}' is unregulated: its {feed.volts:g} V may be {most:g} V without load, and '{unit.name}' accepts "
            f"{unit.accepts_high_v.value:g} V",
            subject=(unit.name, *(str(port) for port in feed.outlets)),
            label="fed from an unregulated supply",
            also=(Label(unit.accepts_high_v.span, "no more than this"),),
            numbers=(Number("off load", most, "V"), Number("accepted", unit.accepts_high_v.value, "V")),
            help=f"use a regulated supply, or measure what arrives at '{unit.name}' before it is plugged in",
        )


CHECK = unregulated_supply
