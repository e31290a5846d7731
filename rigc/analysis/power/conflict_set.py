"""A problem of outlets without a way -> the tightest set of units that is to blame, and which outlets they want."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.outlet_fit import fits
from rigc.analysis.power.outlet_placing import any_placing
from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.placing import Placing
from rigc.analysis.power.placing_search import Search
from rigc.analysis.power.power_tap import Tap
from rigc.analysis.power.unfed import Held, Unfed
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.source import Span


def conflict_set(rig: Rig, problem: OutletProblem, limits: LoadLimits) -> Unfed:
    """Units that can't all be fed within `limits`, of which no one can be left out without the others having a way.

    Those with the most outlets to choose from are tried without first, so that what is left wants the scarce ones.
    """
    units = _tightest(problem, limits)
    tight = problem.replace(units=units)
    names = tuple(unit.name for unit in units)
    empty = [site.outlet for at, site in enumerate(problem.sites) if not site.tenants and at in _wanted(tight, limits)]
    if len(empty) < len(units):
        held = _held(tight, limits)
        unfed = Unfed("rivals", names, tuple(empty), _where(rig, names[0]), held)
        return _needing(tight, limits, unfed)
    eased = {"kept free": tight.replace(spare={}), "ceiling": tight.replace(ceilings={})}
    why = next((word for word, easier in eased.items() if feasible(easier, limits)), "together")
    return Unfed(why, names, (), rig.power.others_span or rig.end)


def feasible(problem: OutletProblem, limits: LoadLimits) -> bool:
    """Whether all units can be fed within `limits`; also where the search ended before it knew."""
    found = Search(any_placing(problem, limits), first=True).run()
    return found.options is not None or not found.proved


def _tightest(problem: OutletProblem, limits: LoadLimits) -> tuple[Unit, ...]:
    search = Search(any_placing(problem, limits), first=True)
    search.run()
    first = [problem.units[unit] for group in search.short for unit in group]
    kept = first if first and not feasible(problem.replace(units=tuple(first)), limits) else list(problem.units)
    task = any_placing(problem.replace(units=tuple(kept)), limits)
    choices = {unit.name: len(_sites(task, at)) for at, unit in enumerate(kept)}
    for unit in sorted(reversed(kept), key=lambda unit: -choices[unit.name]):
        fewer = [each for each in kept if each is not unit]
        if not feasible(problem.replace(units=tuple(fewer)), limits):
            kept = fewer
    return tuple(kept)


def _sites(task: Placing, unit: int) -> frozenset[int]:
    return frozenset(option[0] for option in task.options((unit,)))


def _wanted(problem: OutletProblem, limits: LoadLimits) -> frozenset[int]:
    task = any_placing(problem, limits)
    return frozenset[int]().union(*(_sites(task, unit) for unit in range(task.units)))


def _held(problem: OutletProblem, limits: LoadLimits) -> tuple[Held, ...]:
    """Units that want the same outlets, as many as they are; some are always left over."""
    task = any_placing(problem, limits)
    alike: dict[frozenset[int], list[int]] = {}
    for unit in range(task.units):
        alike.setdefault(_sites(task, unit), []).append(unit)
    held = []
    for sites, units in alike.items():
        if len(sites) == len(units) < task.units and not any(problem.sites[at].tenants for at in sites):
            volts = [problem.sites[option[0]].taps[option[3]].volts for unit in units for option in task.options((unit,))]
            names = tuple(problem.units[unit].name for unit in units)
            outlets = tuple(problem.sites[at].outlet for at in sorted(sites))
            held.append(Held(names, outlets, tuple(dict.fromkeys(volts))))
    return tuple(held)


def _needing(problem: OutletProblem, limits: LoadLimits, unfed: Unfed) -> Unfed:
    """The same with what its rivals need, where that is a current."""
    task = any_placing(problem, limits)
    taps: list[Tap] = []
    barred = False
    for at, unit in enumerate(problem.units):
        if unit.name in unfed.rivals:
            mine = task.options((at,))
            taps += [problem.sites[option[0]].taps[option[3]] for option in mine]
            sites = {option[0] for option in mine}
            turned, sized = unit.name in problem.turned, unit.name in problem.sized
            barred = barred or any(
                fits(unit, tap, turned, sized)
                for number, site in enumerate(problem.sites)
                if number not in sites and not site.tenants
                for tap in site.taps
            )
    volts = {tap.volts for tap in taps}
    return unfed.replace(  # type: ignore[no-any-return]
        needs_ma=min(tap.limit_ma for tap in taps) if barred and taps else None,
        at_volts=volts.pop() if len(volts) == 1 else None,
    )


def _where(rig: Rig, name: str) -> Span:
    unit = rig.units.get(name)
    return rig.power.others_span or rig.end if unit is None else unit.declared
