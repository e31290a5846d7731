"""OutletProblem -> the placing of its units on its outlets as numbers: options, costs, budgets of supplies, and returns in common."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from math import floor

from rigc.analysis.feeds.choice.order_of_merit import GRAIN, SETTINGS, SHARE_PARTS, Levels, Scale
from rigc.analysis.feeds.choice.outlet_problem import RESERVE, Ceiling, OutletProblem, Site
from rigc.analysis.feeds.load_limits import HARD, LoadLimits
from rigc.analysis.feeds.outlet_bearing import bears, drawn_ma
from rigc.analysis.feeds.outlet_fit import fits
from rigc.analysis.feeds.outlet_sharing import mixes, positive
from rigc.analysis.feeds.power_tap import Tap
from rigc.model.things import Unit
from rigc.solvers.assignment.problem import Budget, Common, Group, Option, Placing

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


def cheapest_placing(problem: OutletProblem, limits: LoadLimits) -> Placing:
    """The task of the best choice: the bare ratings bind, going beyond `limits` is a warning that costs."""
    outlets = _Costed(problem, limits)
    return Placing(
        len(problem.units),
        len(problem.sites),
        outlets.options,
        outlets.partners,
        outlets.riding,
        outlet_budgets(problem, limits, outlets.scale.pack(Levels(1))),
        outlet_commons(problem, outlets.scale.pack(Levels(1))),
        GRAIN,
    )


def any_placing(problem: OutletProblem, limits: LoadLimits) -> Placing:
    """The task of any choice at all within `limits`; it costs 1 for each unit that joins others."""
    outlets = _Bare(problem, limits)
    return Placing(
        len(problem.units),
        len(problem.sites),
        outlets.options,
        outlets.partners,
        lambda _group, _hosts: 1,
        outlet_budgets(problem, limits, None),
        outlet_commons(problem, None),
    )


class _Bare:
    """Options within limits, whatever they cost."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits) -> None:
        self.problem, self.limits, self.hard = problem, limits, limits
        at = {unit.name: number for number, unit in enumerate(problem.units)}
        self.partners = tuple(
            frozenset(at[name] for name in problem.sharers.get(unit.name, ()) if name in at) for unit in problem.units
        )
        self._tenants = common_tenants(problem)
        self._options: dict[Group, tuple[Option, ...]] = {}
        self._fits: dict[tuple[int, tuple[object, ...], float], bool] = {}

    def options(self, group: Group) -> tuple[Option, ...]:
        """Where a group may stand: all fit, the tap bears them and the units stated there, all may share."""
        if group not in self._options:
            self._options[group] = tuple(self._found(group))
        return self._options[group]

    def _found(self, group: Group) -> Iterator[Option]:
        units = tuple(self.problem.units[unit] for unit in group)
        for at, site in enumerate(self.problem.sites):
            there = self._tenants.get(site.common, ())
            if (site.tenants and not self._welcome(units, site)) or (there and any(map(positive, (*there, *units)))):
                continue
            for setting, tap in enumerate(site.taps):
                if all(self._fit(unit, site, tap) for unit in group) and bears(tap, (*site.tenants, *units), self.hard):
                    yield at, self.cost(group, at, setting), self._load(units, site, tap), setting

    def cost(self, group: Group, at: int, setting: int) -> int:  # noqa: ARG002
        """What a group costs on that setting of a site."""
        return len(group) - 1

    def _welcome(self, units: tuple[Unit, ...], site: Site) -> bool:
        sharers = self.problem.sharers
        return site.open and all(tenant.name in sharers.get(unit.name, ()) for unit in units for tenant in site.tenants)

    def _fit(self, unit: int, site: Site, tap: Tap) -> bool:
        key = unit, site.look, tap.volts
        if key not in self._fits:
            each = self.problem.units[unit]
            self._fits[key] = fits(each, tap, each.name in self.problem.turned, each.name in self.problem.sized)
        return self._fits[key]

    def _load(self, units: tuple[Unit, ...], site: Site, tap: Tap) -> int:
        ceiling = self.problem.ceilings.get(site.outlet.thing)
        if ceiling is None:
            return 0
        factor = LOAD_PARTS * (tap.volts / 1000 if ceiling.watts else 1.0)
        return sum(round(drawn_ma(unit) * factor) for unit in units)


class _Costed(_Bare):
    """The same with the levels of cost, beyond limits at a warning each."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits) -> None:
        super().__init__(problem, limits)
        self.hard = HARD
        self.scale = Scale(problem)
        self._one_sharing = self.scale.pack(Levels(sharing=1))
        by_name = sorted(range(len(problem.units)), key=lambda at: _name_key(problem.units[at]))
        self._rank = {unit: len(by_name) - rank for rank, unit in enumerate(by_name)}
        strength = sorted({max(tap.limit_ma for tap in site.taps) for site in problem.sites}, reverse=True)
        self._weaker = [strength.index(max(tap.limit_ma for tap in site.taps)) for site in problem.sites]
        self._own: dict[tuple[int, int], int] = {}
        self._least: dict[int, int] = {}
        self._crowd = tuple(self._largest_group(unit) for unit in range(len(problem.units)))
        self._joins = frozenset(
            at
            for at, unit in enumerate(problem.units)
            if any(site.tenants and self._welcome((unit,), site) for site in problem.sites)
        )

    def cost(self, group: Group, at: int, setting: int) -> int:
        """The group's levels on that setting of a site, beside those of the units stated there."""
        problem, site = self.problem, self.problem.sites[at]
        units = tuple(problem.units[unit] for unit in group)
        warnings = self._warnings((*site.tenants, *units), site, setting)
        if site.tenants:
            warnings -= self._warnings(site.tenants, site, setting)
        elif site.taps[setting].volts != site.taps[0].volts and not units[0].name.startswith(RESERVE):
            warnings += 1  # its switch is moved
        total = self.scale.pack(Levels(warnings)) if warnings else 0
        if len(group) + len(site.tenants) > 1:
            total += self.scale.pack(
                Levels(0, SHARE_PARTS * (len(group) + (len(site.tenants) == 1)), self._strangers(units, site.tenants))
            )
        return (
            total + sum(self._own_cost(unit, at) for unit in group) + self._setting_rank(units, site, setting) * GRAIN
        )

    def riding(self, group: Group, hosts: tuple[Group, ...]) -> int:
        """The least that a group adds when it joins one of the hosts: its share of those who share, and its units' own costs."""
        parts = min(self._sharing(group, host) for host in hosts)
        return parts * self._one_sharing + sum(self._least_own(unit) for unit in group)

    def _sharing(self, group: Group, host: Group) -> int:
        if len(group) > 1:
            return SHARE_PARTS if len(host) == 1 else 0
        if len(host) > 1 or group[0] in self._joins or host[0] in self._joins:
            return SHARE_PARTS
        crowd = self._crowd[group[0]]
        return SHARE_PARTS * crowd // (crowd - 1)

    def _largest_group(self, unit: int) -> int:
        """A bound on how many can stand in a group with the unit: it and one more where none of its partners are partners."""
        mates = self.partners[unit]
        if any(self.partners[mate] & mates for mate in mates):
            return 1 + len(mates)
        return 2

    def _warnings(self, units: tuple[Unit, ...], site: Site, setting: int) -> int:
        return (not bears(site.taps[setting], units, self.limits)) + (not site.common and mixes(units))

    def _strangers(self, units: tuple[Unit, ...], tenants: tuple[Unit, ...]) -> int:
        among = [(one.name, other.name) for at, one in enumerate(units) for other in (*units[at + 1 :], *tenants)]
        return sum(frozenset(each) not in self.problem.neighbours for each in among)

    def _own_cost(self, unit: int, at: int) -> int:
        if (unit, at) not in self._own:
            problem, outlet = self.problem, self.problem.sites[at].outlet
            each = problem.units[unit]
            names = self._rank[unit] * at
            if each.draws_ma is None:  # the strongest that is left, since nobody knows what it takes
                names += len(problem.units) * len(problem.sites) * self._weaker[at]
            moved = problem.pins.get(each.name, outlet) != outlet
            length = problem.lengths_mm.get((each.name, outlet), 0)
            self._own[unit, at] = self.scale.pack(Levels(0, 0, 0, moved, length, names * SETTINGS))
        return self._own[unit, at]

    def _least_own(self, unit: int) -> int:
        if unit not in self._least:
            self._least[unit] = min((self._own_cost(unit, each[0]) for each in self.options((unit,))), default=0)
        return self._least[unit]

    def _setting_rank(self, units: tuple[Unit, ...], site: Site, setting: int) -> int:
        """The voltage nearest to what the units need comes first."""
        needed = units[0].volts.value if units[0].volts is not None else 0.0
        order = sorted(range(len(site.taps)), key=lambda each: (abs(site.taps[each].volts - needed), each))
        return min(order.index(setting), SETTINGS - 1)


def _name_key(unit: Unit) -> tuple[bool, str]:
    return unit.name.startswith(RESERVE), unit.name
