"""A problem of outlets without a way -> the tightest set of units that is to blame, and which outlets they want."""

from __future__ import annotations

from rigc.analysis.feeds.choice.open_outlets import reservations
from rigc.analysis.feeds.choice.outlet_bars import Bar, bars_words, outlet_bars
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import any_placing
from rigc.analysis.feeds.choice.unfed import Held, Unfed
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.model.rig import Rig
from rigc.solvers.assignment.problem import Placing, among
from rigc.source import Span


def conflict_set(rig: Rig, problem: OutletProblem, limits: LoadLimits) -> Unfed:
    """Units that can't all be fed within `limits`, of which no one can be left out without the others having a way.

    Those with the most outlets to choose from are tried without first, so that what is left wants the scarce ones.
    """
    units = tuple(problem.units[unit] for unit in _tightest(any_placing(problem, limits)))
    tight = problem.replace(units=units)
    task = any_placing(tight, limits)
    names = tuple(unit.name for unit in units)
    wanted = frozenset[int]().union(*(_sites(task, unit) for unit in range(task.units)))
    empty = [site.outlet for at, site in enumerate(problem.sites) if not site.tenants and at in wanted]
    if len(empty) < len(units):
        unfed = Unfed("rivals", names, tuple(empty), _where(rig, names[0]), _held(tight, task))
        return _needing(rig, tight, task, unfed, limits)
    eased = {"kept free": tight.replace(spare={}), "ceiling": tight.replace(ceilings={})}
    why = next((word for word, easier in eased.items() if feasible(any_placing(easier, limits))), "together")
    return Unfed(why, names, (), rig.power.others_span or rig.end)


def feasible(task: Placing) -> bool:
    """Whether there is any way; also where the search ended before it knew."""
    from rigc.solvers.assignment.search import Search  # most rigs leave nobody over

    found = Search(task, first=True).run()
    return found.options is not None or not found.proved


def _tightest(task: Placing) -> tuple[int, ...]:
    from rigc.solvers.assignment.search import Search

    search = Search(task, first=True)
    search.run()
    kept = tuple(unit for group in search.short for unit in group)
    if not kept or feasible(among(task, kept)):
        kept = tuple(range(task.units))
    for unit in sorted(kept, key=lambda unit: (-len(_sites(task, unit)), -unit)):
        fewer = tuple(each for each in kept if each != unit)
        if not feasible(among(task, fewer)):
            kept = fewer
    return kept


def _sites(task: Placing, unit: int) -> frozenset[int]:
    return frozenset(option[0] for option in task.options((unit,)))


def _held(problem: OutletProblem, task: Placing) -> tuple[Held, ...]:
    """Units that want the same outlets, as many as they are, the fewest first; two units at least are left over."""
    alike: dict[frozenset[int], list[int]] = {}
    for unit in range(task.units):
        alike.setdefault(_sites(task, unit), []).append(unit)
    held = []
    rest = task.units
    taken: set[int] = set()
    for sites, units in sorted(alike.items(), key=lambda each: len(each[0])):
        own = len(sites) == len(units) <= rest - 2 and not taken & sites
        if own and not any(problem.sites[at].tenants for at in sites):
            rest -= len(units)
            taken |= sites
            volts = [
                problem.sites[option[0]].taps[option[3]].volts for unit in units for option in task.options((unit,))
            ]
            names = tuple(problem.units[unit].name for unit in units)
            outlets = tuple(problem.sites[at].outlet for at in sorted(sites))
            held.append(Held(names, outlets, tuple(dict.fromkeys(volts))))
    return tuple(held)


def _needing(rig: Rig, problem: OutletProblem, task: Placing, unfed: Unfed, limits: LoadLimits) -> Unfed:
    """The same with what bars its rivals from the outlets that they do not want."""
    wanted = set(unfed.outlets)
    volts: set[float] = set()
    found: dict[str, list[Bar]] = {}
    for at, unit in enumerate(problem.units):
        if unit.name in unfed.rivals:
            volts |= {problem.sites[option[0]].taps[option[3]].volts for option in task.options((at,))}
            bars = outlet_bars(rig, problem, unit, limits)
            near = [bar for bar in bars if bar.way.outlets[0] not in wanted and "voltage" not in bar.why]
            if near:
                words = bars_words(rig, unit, tuple(near))
                found.setdefault(f"'{unit.name}': {words}" if words.startswith("it") else words, []).extend(near)
    load = bool(found) and all(bar.why == ("load",) for bars in found.values() for bar in bars)
    weaker = max((bar.way.limit_ma for bars in found.values() for bar in bars), default=0.0) if load else None
    words, turned = "" if load else "; ".join(found), False
    if not wanted and unfed.rivals:
        unit = next(each for each in problem.units if each.name == unfed.rivals[0])
        bars = outlet_bars(rig, problem, unit, limits)
        words, turned = bars_words(rig, unit, bars), bool(bars) and bars[0].why == ("polarity",)
    return unfed.replace(  # type: ignore[no-any-return]
        weaker_ma=weaker, at_volts=volts.pop() if len(volts) == 1 else None, bars=words, turned=turned
    )


def _where(rig: Rig, name: str) -> Span:
    """Where a unit, or an outlet that is reserved, is declared."""
    reserved = {each.name: each for each in reservations(rig)}
    return (rig.units.get(name) or reserved[name]).declared
