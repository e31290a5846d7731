"""A fuse is stated with a rating below the current that its supply takes, or that all supplies on its mains strip take.

Why it matters: it would blow with the rig switched on; so either the fuse or what the supply gives is stated wrongly, and a spare bought by
this line protects nothing.
What to do: read the rating on the holder or in the leaflet again, and measure what the units draw. A fuse is replaced by its like, never
by a larger one.
Source: arithmetic, I = S / U at the lowest mains for which it is the right fuse; what a supply takes is reckoned on the power table.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.fuses import FittedFuse, Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import short
from rigc.model.rig import Rig
from rigc.traced.term import Unknown

KIND = Kind(
    "too-small-fuse",
    Level.WARNING,
    __doc__,
    "a fuse lets pass what its supply, or all on its strip, takes",
    "arithmetic: I = S / U",
)
_HAIR_MA = 1e-6


def too_small_fuse(rig: Rig, fuses: Fuses, loads: MainsLoads) -> Iterator[Diagnostic]:
    """One finding for each such fuse of a supply or a strip."""
    for each in fuses.all:
        taken = loads.strips.get(each.thing)
        if each.thing in loads.all:
            taken = loads.all[each.thing].volt_amperes
        volts = _lowest(rig, each)
        if taken is None or isinstance(taken, Unknown) or volts is None:
            continue
        milliamps, rating = 1000 * float(taken) / volts, each.fuse.rating_ma
        if milliamps > rating.value + _HAIR_MA:
            what = "what is plugged into it" if each.thing in loads.strips else "it"
            yield KIND.at(
                rating.span,
                f"the fuse of '{each.thing}' is one of {rating.typed}, and {what} takes {short(milliamps)} mA at {volts:g} V",
                subject=(each.thing,),
                label="would blow",
                numbers=(Number("taken", milliamps, "mA"), Number("fuse", rating.value, "mA")),
                help="read the rating again, and measure what the units draw; a fuse is replaced by its like, never by a larger one",
            )


def _lowest(rig: Rig, fitted: FittedFuse) -> float | None:
    """The mains at which the fuse is the right one: as stated with it, else the lowest of the scenarios."""
    if fitted.fuse.at_v is not None:
        return fitted.fuse.at_v.value
    mains = [each.mains.low_v for each in rig.scenarios.values() if each.mains is not None]
    return min(mains, default=None)


CHECK = too_small_fuse
