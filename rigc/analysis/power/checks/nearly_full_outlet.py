"""An outlet is loaded to more than {power.LOAD_SHARE} of its rating, or to more than {power.DIGITAL_LOAD_SHARE} by a digital unit of unknown start-up.

Why it matters: there is nothing left for heat, age and the moment of switching on; a converter in a digital unit draws
more as the voltage sags, and the outlet folds back again and again.
What to do: use a stronger outlet, or measure the start-up current and state it (`starts 230 mA`).
Source: common practice, no source. `limit load` and `limit digital load` in the rig block set other limits.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.choice.outlet_problem import RESERVE
from rigc.analysis.feeds.choice.unfed import Unfed, rivals_words
from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.outlet_bearing import unknown_start
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.unit_needs import current_of
from rigc.analysis.power.joint_loads import JointLoad, JointLoads
from rigc.analysis.power.mends.other_feeds import lighter
from rigc.analysis.power.mends.smallest_changes import mends
from rigc.analysis.power.squeezes import Squeezes
from rigc.diagnostics.diagnostic import MAY_BE, Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.facts.power import DIGITAL_LOAD_SHARE, LOAD_SHARE
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.traced.ranged import Range

KIND = Kind(
    "nearly-full-outlet",
    Level.WARNING,
    __doc__,
    f"load ≤ {LOAD_SHARE} of rating, ≤ {DIGITAL_LOAD_SHARE} with a digital unit of unknown start-up",
    "common practice, no source",
)


def nearly_full_outlet(
    rig: Rig, power: PowerAssignment, squeezes: Squeezes, joint: JointLoads, limits: LoadLimits, places: Placement
) -> Iterator[Diagnostic]:
    """One finding for each outlet that is too full but not overloaded, one for all that a choice could not avoid; can't-check for
    each unit of unknown current."""
    squeezed: list[JointLoad] = []
    for squeeze in squeezes.all:
        mine = squeezes.loads(squeeze, joint, limits)
        squeezed += mine
        if mine:
            yield _unavoidable(squeezes.rig, squeeze, mine, limits, places)
    for load in joint.all:
        if load in squeezed:
            continue
        share = limits.digital_pct if load.digital else limits.load_pct
        if exceeds(load.start_ma, 100, load.limit_ma):
            continue
        if exceeds(load.known_ma, share, load.limit_ma):
            yield _told(rig, power, load, share, limits)
            continue
        unsaid = [name for name in load.units if _unsaid(rig.units[name])]
        if unsaid and exceeds(load.known_ma, limits.digital_pct, load.limit_ma):
            yield _kind_unsaid(rig, load, unsaid[0], limits)
            continue
        for name in load.unknown:
            yield KIND.cant_check(
                rig.units[name].declared,
                f"'{name}' on {load} does not say what current it draws; how full the outlet is can't be checked",
                subject=(name,),
                help=f"measure it and write `draws` in '{name}'",
                wants=(current_of(name),),
            )


def _unsaid(unit: Unit) -> bool:
    """Whether a unit says neither what it is nor what it takes at switch-on."""
    return not unit.flags & {"digital", "analogue"} and unit.starts_ma is None


def _kind_unsaid(rig: Rig, load: JointLoad, name: str, limits: LoadLimits) -> Diagnostic:
    return KIND.cant_check(
        rig.units[name].declared,
        f"'{name}' says neither whether it is digital nor its start-up current; {load} is loaded to "
        f"{percentage(load.known_pct)}, more than the {limits.digital_pct:g} % for a digital unit",
        subject=(name, *(str(port) for port in load.outlets)),
        help=f"write `digital` or `analogue` in '{name}', or measure its start-up current and write it: starts ___ mA",
    )


def _unavoidable(
    rig: Rig, squeeze: Unfed, squeezed: tuple[JointLoad, ...], limits: LoadLimits, places: Placement
) -> Diagnostic:
    rules = limits.replace(total_pct=100.0)
    ends = [
        f"{listed(load.units)} {'stands' if len(load.units) == 1 else 'stand'} on {load} at "
        f"{percentage(load.known_pct)}"
        for load in squeezed
    ]
    if squeeze.why == "rivals" and squeeze.contested:
        told = rivals_words(rig, squeeze)
    else:
        told = (
            f"{listed(name.removeprefix(RESERVE) for name in squeeze.units)} can't all stand within the rules of thumb"
        )
    edits, help = mends(rig, places, rules, squeeze)
    return KIND.at(
        squeeze.span,
        "; ".join((told, *ends)),
        subject=(*squeeze.units, *(str(port) for port in squeeze.outlets)),
        label="little left of an outlet, however they are fed",
        help=help or ("" if edits else "use a stronger supply"),
        mends=edits,
    )


def _told(rig: Rig, power: PowerAssignment, load: JointLoad, share: float, limits: LoadLimits) -> Diagnostic:
    wants = ("wants" if len(load.units) == 1 else "together want") + (" at least" if load.unknown else "")
    unsure = [name for name in load.units if unknown_start(rig.units[name])] if load.digital else []
    whose = "its start-up current" if len(load.units) == 1 else f"the start-up current of {listed(unsure)}"
    why = f", and {whose} is not known" if unsure else ""
    feed = rig.power.feed_of.get(load.units[0])
    most = _may_be(load)
    return KIND.at(
        rig.units[load.units[0]].declared if feed is None else feed.span,
        f"{listed(load.units)} {wants} {load.known_ma:g} of the {load.limit_ma:g} mA of {load} "
        f"({percentage(load.known_pct)}, more than {share:g} %){why}",
        subject=(*load.units, *(str(port) for port in load.outlets)),
        label="little left of this outlet",
        also=tuple(Label(part.setting.span, "rated here") for part in load.parts[:1]),
        numbers=(
            Number("load", load.known_ma, "mA"),
            Number("rating", load.limit_ma, "mA"),
            Number("limit", share, "%"),
            *(() if most is None else (Number(MAY_BE, most, "mA"),)),
        ),
        note=""
        if most is None
        else f"by what the currents may be off by it may be {most:g} mA, more than the {load.limit_ma:g} mA: measure them",
        mends=lighter(rig, power, load, limits, join=False),
        help=_measure(load, unsure, limits),
        otherwise="no move or exchange leaves more: use a stronger supply, or accept this",
    )


def _may_be(load: JointLoad) -> float | None:
    """What the load comes to, in mA, by what the currents may be off by; None where that is no more than the outlet gives."""
    bounds = Range(load.taken).bounds
    return bounds[1] if bounds is not None and exceeds(bounds[1], 100, load.limit_ma) else None


def _measure(load: JointLoad, unsure: list[str], limits: LoadLimits) -> str:
    """The start-up current to be measured, where that would do."""
    if not unsure or exceeds(load.known_ma, limits.load_pct, load.limit_ma):
        return ""
    return f"measure the start-up current of {listed(unsure)} and write it in {'its block' if len(unsure) == 1 else 'the block of each'}: starts ___ mA"


CHECK = nearly_full_outlet
