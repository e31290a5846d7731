"""A set of units in each other's way -> changes of the source that might give them all an outlet, the smallest kinds first."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import ceil

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.outlet_bearing import bears, drawn_ma, highest_ma, unknown_start
from rigc.analysis.power.outlet_fit import fits, reversing
from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.outlet_sharing import mixes
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.rivals_words import joined
from rigc.analysis.power.unfed import Unfed
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating, Supply
from rigc.model.wishes import Feed

Change = tuple[str, Rig]


def _measured(rig: Rig, _problem: OutletProblem, limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """A start-up current measured: then the rule for digital units holds no longer."""
    for name in unfed.units:
        unit = rig.units.get(name)
        if (
            unit is not None
            and unknown_start(unit)
            and unit.draws_ma is not None
            and limits.digital_pct < limits.load_pct
        ):
            changed = rig.replace(units={**rig.units, name: unit.replace(starts_ma=unit.draws_ma)})
            yield f"measure the start-up current of '{name}' and write it as `starts`", changed


def _more_supplies(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for name in rig.supplies:
        if rig.power.others and name not in rig.power.others:
            yield f"add {name} to `others from`", _wishing(rig, others=(*rig.power.others, name))


def _fewer_kept(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for at, (count, supply, span) in enumerate(rig.power.spare):
        rest = (*rig.power.spare[:at], *rig.power.spare[at + 1 :])
        for fewer in range(count - 1, -1, -1):
            words = f"keep {fewer or 'no'} outlet{'s' * (fewer != 1)}{f' of {supply}' if supply else ''} free"
            yield words, _wishing(rig, spare=(*rest, (fewer, supply, span)) if fewer else rest)


def _fewer_reserved(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    for at, (*_, text) in enumerate(rig.power.reserved):
        rest = (*rig.power.reserved[:at], *rig.power.reserved[at + 1 :])
        yield f"reserve no outlet for '{text or 'a unit to come'}'", _wishing(rig, reserved=rest)


def _not_alone(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    for name in rig.power.alone:
        if name in unfed.units:
            yield f"delete `{name} alone`", _wishing(rig, alone=tuple(each for each in rig.power.alone if each != name))


def _sharing(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """Two of the set share, where that makes no new trouble."""
    for one, other in combinations([name for name in unfed.units if name in rig.units], 2):
        if not mixes((rig.units[one], rig.units[other])):
            yield f"write `{one}, {other} may share`", _wishing(rig, may_share=(*rig.power.may_share, (one, other)))


def _unpinned(rig: Rig, _problem: OutletProblem, _limits: LoadLimits, _unfed: Unfed) -> Iterator[Change]:
    """A stated feed given up: its unit finds another outlet."""
    if rig.power.others:
        for at, feed in enumerate(rig.power.feeds):
            rest = (*rig.power.feeds[:at], *rig.power.feeds[at + 1 :])
            yield f"don't state an outlet for {listed(feed.units)}", _wishing(rig, feeds=rest)


def _in_parallel(rig: Rig, problem: OutletProblem, limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """Two isolated outlets of one supply and one voltage, the first such pair of each kind, for a unit of the set."""
    for name in reversed(unfed.units):
        if name not in rig.units:
            continue
        for way in _pairs(rig, problem):
            unit = rig.units[name]
            good = fits(unit, way, name in problem.turned, name in problem.sized) and bears(way, (unit,), limits)
            if good and unit.draws_ma is not None:
                feed = Feed((name,), way.outlets, way.settings[0].volts, "parallel", False, unit.declared)
                share = f"{drawn_ma(unit):g} of {way.limit_ma:g} mA, {percentage(drawn_ma(unit), way.limit_ma)}"
                words = f"feed '{name}' from {joined(way.outlets)} in parallel, if their maker allows it ({share})"
                yield words, _wishing(rig, feeds=(*rig.power.feeds, feed))


def _pairs(rig: Rig, problem: OutletProblem) -> Iterator[Tap]:
    seen: set[object] = set()
    free = [site for site in problem.sites if not site.tenants and not site.common]
    for one, other in combinations(free, 2):
        kind = one.outlet.thing, one.look, other.look
        if one.outlet.thing == other.outlet.thing and one.look == other.look and kind not in seen:
            seen.add(kind)
            for way, again in zip(one.taps, other.taps, strict=True):
                yield tap(rig, (one.outlet, other.outlet), "parallel", (*way.settings, *again.settings))


def one_more(rig: Rig, limits: LoadLimits, unfed: Unfed) -> Iterator[Change]:
    """A supply with one outlet more, of the smallest round rating that bears a unit of the set, isolated and of its plug."""
    for name in unfed.units:
        unit = rig.units.get(name)
        if unit is None or unit.volts is None or unit.current is None:
            continue
        share = limits.digital_pct if unknown_start(unit) else limits.load_pct
        needed = max(drawn_ma(unit) * 100 / share, highest_ma(unit))
        milliamps = max(ceil(needed / 50 - 1e-9), 1) * 50.0
        made = Outlet(
            "more",
            (Rating(unit.volts, unit.current, Fact(milliamps, "", unit.declared), unit.declared),),
            None,
            unit.inlet.connector if unit.inlet is not None else None,
            unit.polarity.value if unit.polarity is not None and name not in reversing(rig) else None,
            None,
            None,
            None,
            unit.declared,
        )
        extra = Supply("supply", "one-more", "", unit.declared, outlets=(made,))
        changed = rig.replace(supplies={**rig.supplies, "one-more": extra})
        words = f"add a supply with an outlet of {milliamps:g} mA at {unit.volts.value:g} V for '{name}'"
        yield words, _wishing(changed, others=(*rig.power.others, "one-more"))


def _wishing(rig: Rig, **wishes: object) -> Rig:
    return rig.replace(power=rig.power.replace(**wishes))  # type: ignore[no-any-return]


KINDS = (
    _measured,
    _more_supplies,
    _fewer_kept,
    _fewer_reserved,
    _not_alone,
    _sharing,
    _unpinned,
    _in_parallel,
)
