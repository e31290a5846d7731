"""A part of all ways of placing: what has been decided so far, and the decisions that divide it further."""

from __future__ import annotations

from rigc.record import Record
from rigc.solvers.assignment.problem import Group, Option, Pair, Placing, pairs

Spot = tuple[int, int]  # site, setting


class Node(Record):
    """`groups` stand together, `parted` pairs never will; a unit in `allowed` stands on one of these spots; `soft` budgets keep
    to their step (True) or have paid for exceeding it (False); `paid` commons have paid. `fixed` is what has been paid so far.

    `prices` of the budgets and of the sites, and the site of each group, are where the search for its bound begins.
    """

    groups: tuple[Group, ...]
    parted: frozenset[Pair]
    allowed: dict[int, frozenset[Spot]]
    soft: dict[int, bool]
    paid: frozenset[int]
    fixed: int
    prices: tuple[int, ...]
    site_prices: tuple[int, ...]
    sites: dict[Group, int]

    def limit(self, task: Placing, budget: int) -> int:
        """What may be taken of a budget."""
        each = task.budgets[budget]
        return each.soft if self.soft.get(budget) and each.soft is not None else each.hard

    def options(self, task: Placing, group: Group) -> list[Option]:
        """The options that are left to a group."""
        found = task.options(group)
        for unit in group:
            spots = self.allowed.get(unit)
            if spots is not None:
                found = tuple(each for each in found if (each[0], each[3]) in spots)
        return list(found)

    def hosts(self, task: Placing, group: Group) -> tuple[Group, ...]:
        """The other groups that this one may still join."""
        first = task.partners[group[0]]
        return tuple(
            other
            for other in self.groups
            if other is not group
            and other[0] in first
            and all(b in task.partners[a] and (a, b) not in self.parted for a, b in pairs(group, other))
        )

    def joined(self, group: Group, host: Group, apart: tuple[Group, ...]) -> Node:
        """The group joins the host, and none of the groups `apart`."""
        both = tuple(sorted((*group, *host)))
        groups = tuple(sorted((both, *(each for each in self.groups if each not in (group, host)))))
        sites = {each: site for each, site in self.sites.items() if each not in (group, host)}
        return self.replace(groups=groups, parted=self.parted | _all_pairs(group, apart), sites=sites)  # type: ignore[no-any-return]

    def stays(self, group: Group, hosts: tuple[Group, ...]) -> Node:
        """The group joins none of these."""
        return self.replace(parted=self.parted | _all_pairs(group, hosts))  # type: ignore[no-any-return]

    def kept_to(self, task: Placing, unit: int, sites: frozenset[int], inside: bool) -> Node:
        """The unit stands on one of these sites, or on none of them."""
        group = next(each for each in self.groups if unit in each)
        spots = frozenset((each[0], each[3]) for each in self.options(task, group) if (each[0] in sites) is inside)
        return self._restricted(unit, spots)

    def kept_to_spot(self, task: Placing, group: Group, spot: Spot, inside: bool) -> Node:
        """The group stands on this spot, or not."""
        spots = frozenset((each[0], each[3]) for each in self.options(task, group))
        return self._restricted(group[0], frozenset({spot}) if inside else spots - {spot})

    def _restricted(self, unit: int, spots: frozenset[Spot]) -> Node:
        spots &= self.allowed.get(unit, spots)
        return self.replace(allowed={**self.allowed, unit: spots})  # type: ignore[no-any-return]


def _all_pairs(group: Group, others: tuple[Group, ...]) -> frozenset[Pair]:
    return frozenset(pair for other in others for pair in pairs(group, other))
