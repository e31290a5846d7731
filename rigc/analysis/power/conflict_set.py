"""A problem of outlets without a way -> the tightest set of units that is to blame, and which outlets they want."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.outlet_placing import any_placing
from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.placing_search import Search
from rigc.analysis.power.unfed import Unfed
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
    where = _where(rig, names[0])
    task = any_placing(tight, limits)
    wanted = {option[0] for unit in range(task.units) for option in task.options((unit,))}
    empty = [site.outlet for at, site in enumerate(problem.sites) if at in wanted and not site.tenants]
    if not wanted or len(empty) < len(units):
        return Unfed("rivals", names, tuple(empty), where)
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
    choices = {unit.name: len(task.options((at,))) for at, unit in enumerate(kept)}
    for unit in sorted(reversed(kept), key=lambda unit: -choices[unit.name]):
        fewer = [each for each in kept if each is not unit]
        if not feasible(problem.replace(units=tuple(fewer)), limits):
            kept = fewer
    return tuple(kept)


def _where(rig: Rig, name: str) -> Span:
    unit = rig.units.get(name)
    return rig.power.others_span or rig.end if unit is None else unit.declared
