"""The choice of outlets as one mixed-integer linear program, for HiGHS (scipy.optimize.milp): a second, independent way.

It has a variable for each unit on each setting of each outlet, and none of what the compiler searches by. It shares with the
compiler only the reading of a rig: what the stated feeds take, and who may share with whom.
"""

from __future__ import annotations

from collections import defaultdict
from itertools import combinations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from rigc.analysis.feeds.choice.outlet_problem import OutletProblem, Site
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.model.things import Unit

Terms = dict[int, float]
BIG = 10_000.0


class Program:
    """Variables (all 0 or 1), rows, and six objectives in order. If `strict`, no outlet may be loaded beyond the limits."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits, strict: bool = False) -> None:
        self.problem, self.limits, self.strict = problem, limits, strict
        self.count = 0
        self.rows: list[tuple[Terms, float]] = []  # terms ≤ bound
        self.equal: list[tuple[Terms, float]] = []
        self.levels: list[Terms] = [defaultdict(float) for _ in range(6)]
        self.x: dict[tuple[int, int, int], int] = {}
        self._units()
        for at, site in enumerate(problem.sites):
            self._site(at, site)
        self._shares()
        self._commons()
        self._ceilings()
        self._spares()
        self._names()

    def solve(self) -> tuple[int, ...] | None:
        """The least of each objective, the former ones kept; None if there is no way."""
        found = []
        for level in self.levels:
            value = self._least(level)
            if value is None:
                return None
            found.append(value)
            self.rows.append((dict(level), value + 0.01))
        return tuple(found)

    def _least(self, level: Terms) -> int | None:
        if not self.count:
            return None if self.equal else 0
        costs = np.zeros(self.count)
        for at, cost in level.items():
            costs[at] = cost
        rows = [*self.rows, *self.equal]
        matrix = np.zeros((len(rows), self.count))
        for number, (terms, _) in enumerate(rows):
            for at, factor in terms.items():
                matrix[number, at] = factor
        upper = np.array([bound for _, bound in rows])
        lower = np.array([-np.inf] * len(self.rows) + [bound for _, bound in self.equal])
        result = milp(
            costs,
            constraints=LinearConstraint(matrix, lower, upper),
            integrality=np.ones(self.count),
            bounds=Bounds(0, 1),
            options={"mip_rel_gap": 0.0},
        )
        assert result.status in (0, 2), result.message
        return None if result.status == 2 else round(result.fun)

    def _variable(self) -> int:
        self.count += 1
        return self.count - 1

    def _here(self, unit: int, sites: list[int]) -> Terms:
        return {at: 1.0 for (who, site, _), at in self.x.items() if who == unit and site in sites}

    def _forbid(self, terms: Terms, bound: float) -> None:
        self.rows.append((terms, bound))

    def _flag(self, *parts: Terms) -> int:
        """A variable that is 1 where all parts are."""
        flag = self._variable()
        together: Terms = {flag: -1.0}
        for part in parts:
            for at, factor in part.items():
                together[at] = together.get(at, 0.0) + factor
        self._forbid(together, len(parts) - 1)
        return flag

    def _units(self) -> None:
        problem = self.problem
        for number, each in enumerate(problem.units):
            mine: Terms = {}
            for at, site in enumerate(problem.sites):
                for setting, tap in enumerate(site.taps):
                    right = _suits(each, tap, each.name in problem.turned, each.name in problem.sized)
                    if right and self._company(each, site):
                        self.x[number, at, setting] = self._variable()
                        mine[self.x[number, at, setting]] = 1.0
            self.equal.append((mine, 1.0))
            if not mine:  # a row without variables that asks for 1
                mine[self._variable()] = 0.0

    def _company(self, each: Unit, site: Site) -> bool:
        mates = self.problem.sharers.get(each.name, frozenset())
        return not site.tenants or (site.open and all(tenant.name in mates for tenant in site.tenants))

    def _site(self, at: int, site: Site) -> None:
        there = [unit for unit in range(len(self.problem.units)) if self._here(unit, [at])]
        for one, other in combinations(there, 2):
            if self.problem.units[other].name not in self.problem.sharers.get(self.problem.units[one].name, ()):
                self._forbid({**self._here(one, [at]), **self._here(other, [at])}, 1)
        chosen: Terms = {}
        for setting, tap in enumerate(site.taps):
            mine = {unit: self.x[unit, at, setting] for unit in there if (unit, at, setting) in self.x}
            if mine:
                turned = self._variable()
                chosen[turned] = 1.0
                for variable in mine.values():
                    self._forbid({variable: 1.0, turned: -1.0}, 0)
                self._loads(site, tap.limit_ma, mine)
                if not site.tenants and tap.volts != site.taps[0].volts:
                    self._switch_moved(
                        {unit: each for unit, each in mine.items() if ":" not in self.problem.units[unit].name}
                    )
        self._forbid(chosen, 1)

    def _switch_moved(self, mine: dict[int, int]) -> None:
        """One warning where any unit, and no reservation, stands there."""
        moved = self._variable()
        self.levels[0][moved] = 1.0
        for variable in mine.values():
            self._forbid({variable: 1.0, moved: -1.0}, 0)

    def _loads(self, site: Site, limit: float, mine: dict[int, int]) -> None:
        units = self.problem.units
        most = {variable: _most(units[unit]) for unit, variable in mine.items()}
        there = sum(map(_most, site.tenants))
        if there <= limit:
            self._forbid(most, limit - there + 1e-7)
        else:
            self._forbid(dict.fromkeys(most, 1.0), 0)
            return
        running = {variable: _drawn(units[unit]) for unit, variable in mine.items()}
        standing = sum(map(_drawn, site.tenants))
        unsure_tenants = any(map(_unsure, site.tenants))
        if standing * 100 > (self.limits.digital_pct if unsure_tenants else self.limits.load_pct) * limit + 1e-7:
            if self.strict:
                self._forbid(dict.fromkeys(most, 1.0), 0)
            return  # it is beyond the rule as stated: no further warning
        warned = self._variable()
        self._forbid({warned: 1.0}, 0 if self.strict else 1)
        self.levels[0][warned] = 1.0
        room = limit * self.limits.load_pct / 100 - standing + 1e-7
        self._forbid({**running, warned: -BIG}, room)
        careful = limit * self.limits.digital_pct / 100 - standing + 1e-7
        if unsure_tenants:
            self._forbid({**running, warned: -BIG}, careful)
        for unit, variable in mine.items():
            if _unsure(units[unit]):
                terms = {**running, warned: -BIG}
                terms[variable] = terms.get(variable, 0.0) + BIG
                self._forbid(terms, careful + BIG)

    def _shares(self) -> None:
        problem = self.problem
        sharing: dict[int, int] = {}
        for at, site in enumerate(problem.sites):
            there = [unit for unit in range(len(problem.units)) if self._here(unit, [at])]
            for one, other in combinations(there, 2):
                if problem.units[other].name in problem.sharers.get(problem.units[one].name, ()):
                    both = self._flag(self._here(one, [at]), self._here(other, [at]))
                    for unit in (one, other):
                        self._forbid({both: 1.0, sharing.setdefault(unit, self._variable()): -1.0}, 0)
                    if frozenset((problem.units[one].name, problem.units[other].name)) not in problem.neighbours:
                        self.levels[2][both] += 1
            if site.tenants:
                joined = self._variable()
                for unit in there:
                    for variable in self._here(unit, [at]):
                        self._forbid({variable: 1.0, sharing.setdefault(unit, self._variable()): -1.0}, 0)
                        self._forbid({variable: 1.0, joined: -1.0}, 0)
                        name = problem.units[unit].name
                        self.levels[2][variable] += sum(
                            frozenset((name, tenant.name)) not in problem.neighbours for tenant in site.tenants
                        )
                self.levels[1][joined] = float(len(site.tenants) == 1)
        for variable in sharing.values():
            self.levels[1][variable] = 1.0

    def _commons(self) -> None:
        problem = self.problem
        groups: dict[tuple[str, object], list[int]] = defaultdict(list)
        for at, site in enumerate(problem.sites):
            groups[("common", site.common) if site.common else ("outlet", at)].append(at)
        for (kind, _), sites in groups.items():
            tenants = list({tenant.name: tenant for at in sites for tenant in problem.sites[at].tenants}.values())
            disturbed = self._variable()
            if not _disturb(tenants):
                self.levels[0][disturbed] = 1.0
            here = {unit: terms for unit in range(len(problem.units)) if (terms := self._here(unit, sites))}
            for unit, terms in here.items():
                each = problem.units[unit]
                if kind == "common" and tenants and any(_plus(one) for one in (each, *tenants)):
                    self._forbid(terms, 0)
                if tenants and _disturb([*tenants, each]):
                    self._forbid({**terms, disturbed: -1.0}, 0)
            for one, other in combinations(here, 2):
                pair = [problem.units[one], problem.units[other]]
                if kind == "common" and any(map(_plus, pair)):
                    self._forbid({**here[one], **here[other]}, 1)
                if _disturb(pair):
                    self._forbid({**here[one], **here[other], disturbed: -1.0}, 1)

    def _ceilings(self) -> None:
        for supply, ceiling in self.problem.ceilings.items():
            taken: Terms = {}
            for (unit, at, setting), variable in self.x.items():
                site = self.problem.sites[at]
                if site.outlet.thing == supply:
                    factor = site.taps[setting].volts / 1000 if ceiling.watts else 1.0
                    taken[variable] = _drawn(self.problem.units[unit]) * factor
            hard = max(0.0, ceiling.most - ceiling.taken) + 1e-7
            soft = ceiling.most * self.limits.total_pct / 100 - ceiling.taken + 1e-7
            self._forbid(taken, hard)
            if 0 <= soft < hard:
                beyond = self._variable()
                self.levels[0][beyond] = 1.0
                self._forbid({**taken, beyond: -BIG}, soft)

    def _spares(self) -> None:
        for supply, count in self.problem.spare.items():
            used: Terms = {}
            for at, site in enumerate(self.problem.sites):
                if not site.tenants and supply in ("", site.outlet.thing):
                    used[self._variable()] = 1.0
                    for (_, where, _), variable in self.x.items():
                        if where == at:
                            self._forbid({variable: 1.0, self.count - 1: -1.0}, 0)
            self._forbid(used, max(0, len(used) - count))

    def _names(self) -> None:
        problem = self.problem
        order = sorted(
            range(len(problem.units)), key=lambda at: (":" in problem.units[at].name, problem.units[at].name)
        )
        turned: dict[tuple[int, int, float], int] = {}
        for (unit, at, setting), variable in self.x.items():
            each, site = problem.units[unit], problem.sites[at]
            self.levels[3][variable] += problem.pins.get(each.name, site.outlet) != site.outlet
            self.levels[4][variable] += problem.lengths_mm.get((each.name, site.outlet), 0)
            self.levels[5][variable] += (len(order) - order.index(unit)) * at * 8
            needed = each.volts.value if each.volts is not None else 0.0
            nearer = sum(
                (abs(tap.volts - needed), number) < (abs(site.taps[setting].volts - needed), setting)
                for number, tap in enumerate(site.taps)
            )
            if nearer:
                if (at, setting, needed) not in turned:
                    turned[at, setting, needed] = self._variable()
                    self.levels[5][turned[at, setting, needed]] = nearer
                self._forbid({variable: 1.0, turned[at, setting, needed]: -1.0}, 0)


def _suits(each: Unit, tap: object, turned: bool, sized: bool) -> bool:
    volts, kind = tap.volts, tap.current  # type: ignore[attr-defined]
    needed = each.volts.value if each.volts is not None else 0.0
    low = each.accepts_low_v.value if each.accepts_low_v is not None else needed
    high = each.accepts_high_v.value if each.accepts_high_v is not None else needed
    pole = tap.polarity  # type: ignore[attr-defined]
    if turned and pole is not None:
        pole = "centre-positive" if pole == "centre-negative" else "centre-negative"
    plug = tap.connector  # type: ignore[attr-defined]
    return (
        low - 1e-9 <= volts <= high + 1e-9
        and each.current == kind
        and (kind == "ac" or each.polarity is None or pole is None or each.polarity.value == pole)
        and (sized or each.inlet is None or plug is None or each.inlet.connector == plug)
    )


def _drawn(each: Unit) -> float:
    return each.draws_ma.value if each.draws_ma is not None else 0.0


def _most(each: Unit) -> float:
    return max(_drawn(each), each.starts_ma.value if each.starts_ma is not None else 0.0)


def _unsure(each: Unit) -> bool:
    return "digital" in each.flags and each.starts_ma is None


def _plus(each: Unit) -> bool:
    return each.ground is not None and each.ground.value == "positive"


def _disturb(units: list[Unit]) -> bool:
    kinds = {
        "digital" if "digital" in each.flags else "analogue" if "analogue" in each.flags else "?" for each in units
    }
    return len(units) > 1 and ({"digital", "analogue"} <= kinds or any("high gain" in each.flags for each in units))
