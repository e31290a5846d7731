"""An outlet's voltage switch is not at its factory setting.

Why it matters: the switch is bumped in transit, or the supply is exchanged for a new one: then the unit gets another voltage.
What to do: print the position on the power table, and tape the switch over.
Source: common practice, no source. The first voltage of an outlet's list is its factory setting.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_fit import takes_voltage
from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "moved-switch",
    Level.WARNING,
    __doc__,
    "an outlet of several voltages is used at its first one, its factory setting",
    "common practice, no source",
)


def moved_switch(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each such outlet in use; none where the voltage that is set is wrong for a unit on it, which another rule tells."""
    for port, load in power.loads.items():
        outlet = outlet_at(rig, port)
        if outlet is None or not load.units or load.volts == outlet.ratings[0].volts.value:
            continue
        if any(takes_voltage(rig.units[name], power.taps[name]) is False for name in load.units if name in power.taps):
            continue
        feed = power.of(load.units[0])
        made = outlet.ratings[0].volts.value
        yield KIND.at(
            feed.span if feed is not None else outlet.span,
            f"'{port}' must be set to {load.volts:g} V for {listed(load.units)}; from the factory it is set to {made:g} V",
            subject=(str(port), *load.units),
            label="not the position of a new supply",
            also=(Label(load.setting.span, f"{load.volts:g} V is a setting of this"),),
            numbers=(Number("set to", load.volts, "V"), Number("new", made, "V")),
            mends=_mends(rig, power, load, limits),
            help=f"check the switch with a meter before the unit is plugged in, tape it over at {load.volts:g} V, and accept this",
        )


def _mends(rig: Rig, power: PowerAssignment, load: OutletLoad, limits: LoadLimits) -> tuple[Mend, ...]:
    """The unit at the same voltage on an outlet that needs no switch moved; not where several units share this one."""
    if len(load.units) > 1:
        return ()
    return moves(rig, power, load.units[0], limits, lambda way: way.volts == load.volts)[:1]


CHECK = moved_switch
