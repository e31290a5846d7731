"""OutletProblem -> its commons: outlets whose returns are one, and who must never, or had better not, meet on them."""

from __future__ import annotations

from itertools import combinations

from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.outlet_sharing import mixes, positive
from rigc.analysis.power.placing import Common
from rigc.model.things import Unit


def outlet_commons(problem: OutletProblem, penalty: int | None) -> tuple[Common, ...]:
    """One for each common. Two units never meet if one is of positive ground; with a penalty, units that mix cost it once."""
    return tuple(
        _common(
            problem.units,
            frozenset(at for at, site in enumerate(problem.sites) if site.common == name),
            tenants,
            penalty,
        )
        for name, tenants in common_tenants(problem).items()
    )


def common_tenants(problem: OutletProblem) -> dict[str, tuple[Unit, ...]]:
    """The units that the source states on each common."""
    found: dict[str, dict[str, Unit]] = {site.common: {} for site in problem.sites if site.common}
    for site in problem.sites:
        if site.common:
            found[site.common].update({unit.name: unit for unit in site.tenants})
    return {name: tuple(units.values()) for name, units in found.items()}


def _common(units: tuple[Unit, ...], sites: frozenset[int], tenants: tuple[Unit, ...], penalty: int | None) -> Common:
    never = {(a, b) for a, b in combinations(range(len(units)), 2) if positive(units[a]) or positive(units[b])}
    if penalty is None or mixes(tenants):
        return Common(sites, frozenset(never))
    dear = {(a, b) for a, b in combinations(range(len(units)), 2) if mixes((units[a], units[b]))}
    alone = {at for at, unit in enumerate(units) if tenants and mixes((*tenants, unit))}
    return Common(sites, frozenset(never), frozenset(dear), frozenset(alone), penalty)
