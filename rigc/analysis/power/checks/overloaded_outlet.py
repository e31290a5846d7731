"""Units draw more than their outlet gives at the voltage it is set to, when running or when they start.

Why it matters: the outlet sags, folds back or shuts down, and the units with it; at best it runs too hot.
What to do: feed one of them from an outlet that gives more.
Source: arithmetic on stated values. In series the smaller rating counts; in parallel nine tenths of the sum
[common practice, no source].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.outlet_bearing import asked_rating_ma, drawn_ma
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.unit_needs import current_of
from rigc.analysis.power.joint_loads import JointLoad, JointLoads
from rigc.analysis.power.mends.other_feeds import lighter
from rigc.analysis.power.misread_currents import look_again, misread
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


def overloaded_outlet(rig: Rig, power: PowerAssignment, joint: JointLoads, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each outlet, or outlets joined, that is too weak; can't-check for each unit of unknown current."""
    for load in joint.all:
        if exceeds(load.start_ma, 100, load.limit_ma):
            yield _told(rig, power, load, limits)
            continue
        for name in load.unknown:
            yield KIND.cant_check(
                rig.units[name].declared,
                f"'{name}' on {load} does not say what current it draws; whether that is too much can't be checked",
                subject=(name,),
                help=f"measure it and write `draws` in '{name}'",
                wants=(current_of(name),),
            )


def _told(rig: Rig, power: PowerAssignment, load: JointLoad, limits: LoadLimits) -> Diagnostic:
    starting = not exceeds(load.known_ma, 100, load.limit_ma)
    taken = load.start_ma if starting else load.known_ma
    share = percentage(load.start_pct if starting else load.known_pct)
    wants = ("wants" if len(load.units) == 1 else "together want") + (" at least" if load.unknown else "")
    gives = "gives" if len(load.outlets) == 1 else "give"
    first = rig.units[load.units[0]]
    feed = rig.power.feed_of.get(first.name)
    return KIND.at(
        first.declared if feed is None else feed.span,
        f"{listed(load.units)} {wants} {taken:g} mA{' at switch-on' if starting else ''}, "
        f"{load} {gives} {load.limit_ma:g} mA" + (f" ({share})" if share else ""),
        subject=(*load.units, *(str(port) for port in load.outlets)),
        label="too much for this outlet" if len(load.outlets) == 1 else "too much for these outlets",
        also=(*_draws(rig, load, starting), *(Label(part.setting.span, "rated here") for part in load.parts[:1])),
        numbers=(Number("load", taken, "mA"), Number("rating", load.limit_ma, "mA")),
        mends=lighter(rig, power, load, limits),
        otherwise=_purchase(rig, load, limits),
    )


def _draws(rig: Rig, load: JointLoad, starting: bool) -> Iterator[Label]:
    for name in load.units:
        unit = rig.units[name]
        fact = unit.starts_ma if starting and unit.starts_ma is not None else unit.draws_ma
        if fact is not None:
            yield Label(fact.span, f"'{name}' {'starts' if fact is unit.starts_ma else 'draws'} {fact.value:g} mA")


def _purchase(rig: Rig, load: JointLoad, limits: LoadLimits) -> str:
    """What is left where nothing in the rig will do: an outlet of its own for the unit that draws most."""
    unit = rig.units[max(load.units, key=lambda name: drawn_ma(rig.units[name]))]
    if misread(rig, unit):
        return look_again(unit)
    at = "" if unit.volts is None else f" at {unit.volts.value:g} V {(unit.current or '').upper()}".rstrip()
    milliamps = asked_rating_ma(unit, limits)
    return f"no move or exchange does it: add a supply with an outlet of {milliamps:g} mA{at} for '{unit.name}'"


CHECK = overloaded_outlet
