"""Units draw more than their outlet gives at the voltage it is set to, when running or when they start.

Why it matters: the outlet sags, folds back or shuts down, and the units with it; at best it runs too hot.
What to do: feed one of them from an outlet that gives more.
Source: arithmetic on stated values. In series the smaller rating counts; in parallel nine tenths of the sum
[common practice, no source].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.joint_loads import JointLoad, JointLoads
from rigc.analysis.computations.load_limits import HARD, LoadLimits, exceeds
from rigc.analysis.power.better_outlets import better_outlets
from rigc.analysis.power.current_of import current_of
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "overloaded-outlet",
    Level.ERROR,
    __doc__,
    "load and measured start-up current ≤ the outlet's rating at its voltage",
    "arithmetic on stated values",
)


def overloaded_outlet(rig: Rig, joint: JointLoads, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each outlet, or outlets joined, that is too weak; can't-check for each unit of unknown current."""
    for load in joint.all:
        if exceeds(load.start_ma, 100, load.limit_ma):
            yield _told(rig, load, limits)
            continue
        for name in load.unknown:
            yield KIND.cant_check(
                rig.units[name].declared,
                f"'{name}' on {load} does not say what current it draws; whether that is too much can't be checked",
                subject=(name,),
                help=f"measure it and write `draws` in '{name}'",
                wants=(current_of(name),),
            )


def _told(rig: Rig, load: JointLoad, limits: LoadLimits) -> Diagnostic:
    starting = not exceeds(load.known_ma, 100, load.limit_ma)
    taken = load.start_ma if starting else load.known_ma
    share = percentage(load.start_pct if starting else load.known_pct)
    wants = ("wants" if len(load.units) == 1 else "together want") + (" at least" if load.unknown else "")
    gives = "gives" if len(load.outlets) == 1 else "give"
    first = rig.units[load.units[0]]
    span = next((each.span for each in rig.power.feeds if load.units[0] in each.units), first.declared)
    return KIND.at(
        span,
        f"{listed(load.units)} {wants} {taken:g} mA{' at switch-on' if starting else ''}, "
        f"{load} {gives} {load.limit_ma:g} mA" + (f" ({share})" if share else ""),
        subject=(*load.units, *(str(port) for port in load.outlets)),
        label="too much for this outlet" if len(load.outlets) == 1 else "too much for these outlets",
        also=(*_draws(rig, load, starting), *(Label(part.setting.span, "rated here") for part in load.parts[:1])),
        numbers=(Number("load", taken, "mA"), Number("rating", load.limit_ma, "mA")),
        help=_way_out(rig, load, limits, taken),
    )


def _draws(rig: Rig, load: JointLoad, starting: bool) -> Iterator[Label]:
    for name in load.units:
        unit = rig.units[name]
        fact = unit.starts_ma if starting and unit.starts_ma is not None else unit.draws_ma
        if fact is not None:
            yield Label(fact.span, f"'{name}' {'starts' if fact is unit.starts_ma else 'draws'} {fact.value:g} mA")


def _way_out(rig: Rig, load: JointLoad, limits: LoadLimits, taken: float) -> str:
    ways = better_outlets(rig, load, limits) or better_outlets(rig, load, HARD)
    if ways:
        shares = [percentage(way.percent(taken)) for way in ways[:3]]
        told = [f"{way} ({share})" for way, share in zip(ways[:3], shares, strict=True)]
        if len(set(shares)) == 1:
            told = [str(way) for way in ways[:3]]
            told[-1] += f" would do ({shares[0]})"
            return " or ".join(told)
        return " or ".join(told) + " would do"
    if len(load.units) > 1:
        biggest = max(load.units, key=lambda name: fact.value if (fact := rig.units[name].draws_ma) else 0.0)
        return f"feed '{biggest}' from an outlet of its own"
    return f"add a supply with an outlet that gives '{load.units[0]}' {taken:g} mA"


CHECK = overloaded_outlet
