"""OutletProblem -> its budgets: the ceilings of supplies, and the outlets that are kept free."""

from __future__ import annotations

from math import floor

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.outlet_bearing import drawn_ma
from rigc.analysis.power.outlet_problem import Ceiling, OutletProblem
from rigc.analysis.power.placing import Budget

LOAD_PARTS = 10**6  # a W or mA of load, in parts


def outlet_budgets(problem: OutletProblem, limits: LoadLimits, penalty: int | None) -> tuple[Budget, ...]:
    """Those that can bind at all. With a penalty a ceiling binds in full, and going beyond its share in `limits` costs that;
    without one the share itself binds."""
    found = []
    for supply, ceiling in problem.ceilings.items():
        sites = frozenset(at for at, site in enumerate(problem.sites) if site.outlet.thing == supply)
        share = _left(ceiling, limits.total_pct)
        if _most(problem, supply, ceiling) > max(0, share):
            full = max(0, _left(ceiling, 100.0))
            if penalty is None:
                found.append(Budget(sites, max(0, share)))
            else:
                found.append(Budget(sites, full, share if 0 <= share < full else None, penalty))
    for supply, count in problem.spare.items():
        empty = frozenset(
            at
            for at, site in enumerate(problem.sites)
            if not site.tenants and (not supply or site.outlet.thing == supply)
        )
        if len(empty) - count < len(problem.units):
            found.append(Budget(empty, max(0, len(empty) - count), counts=True))
    return tuple(found)


def _left(ceiling: Ceiling, share_pct: float) -> int:
    return floor((ceiling.most * share_pct / 100 * (1 + 1e-9) - ceiling.taken) * LOAD_PARTS + 0.5)


def _most(problem: OutletProblem, supply: str, ceiling: Ceiling) -> int:
    """The most that the units could take of it."""
    volts = max((tap.volts for site in problem.sites if site.outlet.thing == supply for tap in site.taps), default=0.0)
    factor = LOAD_PARTS * (volts / 1000 if ceiling.watts else 1.0)
    return sum(round(drawn_ma(unit) * factor) + 1 for unit in problem.units)
