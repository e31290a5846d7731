"""An outlet is loaded to more than four fifths of its rating, or to more than 65 % by a digital unit of unknown start-up.

Why it matters: there is nothing left for heat, age and the moment of switching on; a converter in a digital unit draws
more as the voltage sags, and the outlet folds back again and again.
What to do: use a stronger outlet, or measure the start-up current and state it (`starts 230 mA`).
Source: common practice, no source. `limit load` and `limit digital load` in the rig block set other limits.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.joint_loads import JointLoad, JointLoads
from rigc.analysis.computations.load_limits import LoadLimits, exceeds
from rigc.analysis.power.better_outlets import better_outlets
from rigc.analysis.power.outlet_bearing import unknown_start
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "P02",
    "nearly-full-outlet",
    Level.WARNING,
    __doc__,
    "load ≤ 80 % of rating, ≤ 65 % with a digital unit of unknown start-up",
    "common practice, no source",
)


def nearly_full_outlet(rig: Rig, joint: JointLoads, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each outlet that is too full but not overloaded; can't-check for each unit of unknown current."""
    for load in joint.all:
        share = limits.digital_pct if load.digital else limits.load_pct
        if exceeds(load.start_ma, 100, load.limit_ma):
            continue
        if exceeds(load.known_ma, share, load.limit_ma):
            yield _told(rig, load, share, limits)
            continue
        for name in load.unknown:
            yield KIND.cant_check(
                rig.units[name].declared,
                f"'{name}' on {load} does not say what current it draws; how full the outlet is can't be checked",
                subject=(name,),
                help=f"measure it and write `draws` in '{name}'",
            )


def _told(rig: Rig, load: JointLoad, share: float, limits: LoadLimits) -> Diagnostic:
    wants = ("wants" if len(load.units) == 1 else "together want") + (" at least" if load.unknown else "")
    unsure = [name for name in load.units if unknown_start(rig.units[name])] if load.digital else []
    whose = "its start-up current" if len(load.units) == 1 else f"the start-up current of {listed(unsure)}"
    why = f", and {whose} is not known" if unsure else ""
    span = next((each.span for each in rig.power.feeds if load.units[0] in each.units), None)
    return KIND.at(
        span or rig.units[load.units[0]].declared,
        f"{listed(load.units)} {wants} {load.known_ma:g} of the {load.limit_ma:g} mA of {load} "
        f"({percentage(load.known_ma, load.limit_ma)}, more than {share:g} %){why}",
        subject=(*load.units, *(str(port) for port in load.outlets)),
        label="little left of this outlet",
        also=tuple(Label(part.setting.span, "rated here") for part in load.parts[:1]),
        numbers=(
            Number("load", load.known_ma, "mA"),
            Number("rating", load.limit_ma, "mA"),
            Number("limit", share, "%"),
        ),
        help=_way_out(rig, load, unsure, limits),
    )


def _way_out(rig: Rig, load: JointLoad, unsure: list[str], limits: LoadLimits) -> str:
    if unsure and not exceeds(load.known_ma, limits.load_pct, load.limit_ma):
        return f"measure the start-up current of {listed(unsure)} and write it as `starts`"
    ways = better_outlets(rig, load, limits)
    if ways:
        names = " or ".join(f"{way} ({percentage(load.known_ma, way.limit_ma)})" for way in ways[:3])
        return f"{names} would leave more"
    return "use a stronger outlet" if len(load.units) == 1 else f"give '{load.units[-1]}' another outlet"


CHECK = nearly_full_outlet
