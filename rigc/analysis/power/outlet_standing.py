"""Who stands on which outlet so far in a search: what may be done next, done and undone."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.load_limits import LoadLimits, exceeds
from rigc.analysis.computations.outlet_options import Options
from rigc.analysis.computations.outlet_problem import OutletProblem, Site, bears, drawn_ma
from rigc.analysis.computations.power_tap import Tap
from rigc.model.things import Unit

Choice = tuple[int, int, bool]  # site, tap, whether it joins units that are there


class Standing:
    """Who stands where so far. `put` and `take_back` undo each other exactly, last in first out."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits, options: Options, shares: int) -> None:
        self.problem, self.limits, self.options, self.shares = problem, limits, options, shares
        self.free = {kind: list(reversed(sites)) for kind, sites in options.free.items()}
        self.number = {kind: number for number, kind in enumerate(options.free)}
        self.members = [list(site.tenants) for site in problem.sites]
        self.tap_at = [0 if site.tenants else -1 for site in problem.sites]
        self.where = {unit.name: at for at, site in enumerate(problem.sites) for unit in site.tenants if site.open}
        self.taken = {supply: budget.taken for supply, budget in problem.budgets.items()}
        self.commons: dict[str, list[Unit]] = {}
        self.unused: dict[str, int] = {"": 0}
        for site in problem.sites:
            if site.common:
                self.commons.setdefault(site.common, []).extend(site.tenants)
            for supply in ("", site.outlet.thing):
                self.unused[supply] = self.unused.get(supply, 0) + (not site.tenants)
        self.trail: list[tuple[Unit, Choice]] = []

    def choices(self, unit: Unit) -> Iterator[Choice]:
        """Where a unit may go now: the empty sites that suit it, one of each kind, then sites where it may join others."""
        for kind, tap in self.options.of(unit):
            if self.free[kind] and self._allowed(unit, self.free[kind][-1], tap, False):
                yield self.free[kind][-1], tap, False
        if self.shares:
            partners = self.problem.sharers.get(unit.name, frozenset())
            for site in sorted({self.where[name] for name in partners if name in self.where}):
                if self._allowed(unit, site, self.tap_at[site], True):
                    yield site, self.tap_at[site], True

    def put(self, unit: Unit, choice: Choice) -> None:
        """Stands a unit on a site."""
        at, tap, joins = choice
        site = self.problem.sites[at]
        if not joins:
            self.free[site.kind].pop()
            self.tap_at[at] = tap
        self._count(site, unit, tap, joins, 1)
        self.members[at].append(unit)
        self.where[unit.name] = at
        self.trail.append((unit, choice))

    def take_back(self) -> None:
        """Undoes the last `put`."""
        unit, (at, tap, joins) = self.trail.pop()
        site = self.problem.sites[at]
        del self.where[unit.name]
        self.members[at].pop()
        self._count(site, unit, tap, joins, -1)
        if not joins:
            self.tap_at[at] = -1
            self.free[site.kind].append(at)

    def key(self, depth: int) -> tuple[object, ...]:
        """What the rest of the search depends on: equal keys have equal futures."""
        later = {unit.name for unit in self.problem.units[depth:]}
        used = []
        for _, (at, tap, joins) in self.trail[:depth]:
            if not joins:
                used.append((self.number[self.problem.sites[at].kind], tap, self._tenants_that_matter(at, later)))
        joined = sorted(self._tenants_that_matter(at, later) for _, (at, _, joins) in self.trail[:depth] if joins)
        return (
            depth,
            self.shares,
            tuple(sorted(used)),
            tuple(joined),
            tuple(round(each, 6) for each in self.taken.values()),
        )

    def answer(self) -> dict[str, Tap]:
        """The tap of each unit."""
        return {unit.name: self.problem.sites[at].taps[tap] for unit, (at, tap, _) in self.trail}

    def _tenants_that_matter(self, at: int, later: set[str]) -> tuple[str, ...]:
        names = tuple(unit.name for unit in self.members[at])
        sharers = self.problem.sharers
        common = self.problem.sites[at].common
        joinable = self.shares and any(later & sharers.get(name, frozenset()) for name in names)
        return names if joinable or common else ()

    def _count(self, site: Site, unit: Unit, tap: int, joins: bool, sign: int) -> None:
        supply = site.outlet.thing
        if supply in self.taken:
            self.taken[supply] += sign * self._weight(supply, unit, site.taps[tap])
        if site.common:
            members = self.commons[site.common]
            members.append(unit) if sign > 0 else members.pop()
        if joins:
            self.shares -= sign
        else:
            self.unused[""] -= sign
            self.unused[supply] -= sign

    def _weight(self, supply: str, unit: Unit, tap: Tap) -> float:
        return drawn_ma(unit) * (tap.volts / 1000 if self.problem.budgets[supply].watts else 1.0)

    def _allowed(self, unit: Unit, at: int, tap: int, joins: bool) -> bool:
        site, problem = self.problem.sites[at], self.problem
        supply = site.outlet.thing
        budget = problem.budgets.get(supply)
        if budget is not None:
            total = self.taken[supply] + self._weight(supply, unit, site.taps[tap])
            if exceeds(total, self.limits.total_pct, budget.ceiling):
                return False
        if site.common and self.commons[site.common] and _positive((unit, *self.commons[site.common])):
            return False
        if not joins:
            return all(self.unused[each] > problem.spare.get(each, 0) for each in ("", supply))
        members = tuple(self.members[at])
        partners = problem.sharers.get(unit.name, frozenset())
        return (
            all(member.name in partners for member in members)
            and tap in problem.suits(unit, site, self.limits)
            and bears(site.taps[tap], (*members, unit), self.limits)
        )


def _positive(units: tuple[Unit, ...]) -> bool:
    return any(unit.ground is not None and unit.ground.value == "positive" for unit in units)
