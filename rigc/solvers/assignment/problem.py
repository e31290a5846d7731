"""Placing: groups of units on sites at least cost, as numbers alone. What is placed, and why it costs, is not known here."""

from __future__ import annotations

from collections.abc import Callable

from rigc.record import Record

Group = tuple[int, ...]  # units that stand on one site, ascending
Pair = tuple[int, int]  # two units, ascending
Option = tuple[int, int, int, int]  # site, cost, load on the site's budgets, setting


class Budget(Record):
    """What may be taken of some sites together: never more than `hard`, and at a `penalty` more than `soft` (None: no such step).

    It counts the loads of the options taken or, if `counts`, the sites that are used.
    """

    sites: frozenset[int]
    hard: int
    soft: int | None = None
    penalty: int = 0
    counts: bool = False

    def taken(self, option: Option) -> int:
        """What an option takes of it."""
        return 0 if option[0] not in self.sites else 1 if self.counts else option[2]


class Common(Record):
    """Sites that count as one: pairs that `never` meet on them, and `dear` pairs (and units `dear_alone`) for which it costs
    the `penalty`, once."""

    sites: frozenset[int]
    never: frozenset[Pair]
    dear: frozenset[Pair] = frozenset()
    dear_alone: frozenset[int] = frozenset()
    penalty: int = 0


class Placing(Record):
    """The task. A site bears one group. `options` tells for a group which sites and settings would do, `partners` for each unit
    with which it may stand in a group, `riding` what a group adds at least if it joins one of those other groups.

    All costs are multiples of `grain`.
    """

    units: int
    sites: int
    options: Callable[[Group], tuple[Option, ...]]
    partners: tuple[frozenset[int], ...]
    riding: Callable[[Group, tuple[Group, ...]], int]
    budgets: tuple[Budget, ...] = ()
    commons: tuple[Common, ...] = ()
    grain: int = 1


class Placed(Record):
    """What a search found: the option taken by each group (None: no way was found), its `cost`, the least that any way can
    `bound`, whether it is `proved` that there is no better one (or none at all), and the work it took."""

    options: dict[Group, Option] | None
    cost: int
    bound: int
    proved: bool
    steps: int


def among(task: Placing, units: tuple[int, ...]) -> Placing:
    """The same task for some of its units alone, in this order."""
    at = {unit: number for number, unit in enumerate(units)}

    def inner(found: frozenset[Pair]) -> frozenset[Pair]:
        return frozenset((min(at[a], at[b]), max(at[a], at[b])) for a, b in found if a in at and b in at)

    def outer(group: Group) -> Group:
        return tuple(sorted(units[unit] for unit in group))

    return task.replace(  # type: ignore[no-any-return]
        units=len(units),
        options=lambda group: task.options(outer(group)),
        partners=tuple(frozenset(at[each] for each in task.partners[unit] if each in at) for unit in units),
        riding=lambda group, hosts: task.riding(outer(group), tuple(map(outer, hosts))),
        commons=tuple(
            common.replace(
                never=inner(common.never),
                dear=inner(common.dear),
                dear_alone=frozenset(at[unit] for unit in common.dear_alone if unit in at),
            )
            for common in task.commons
        ),
    )


def pairs(one: Group, other: Group) -> list[Pair]:
    """Every pair of a unit of one group with one of the other."""
    return [(min(a, b), max(a, b)) for a in one for b in other]


def penalties(task: Placing, chosen: dict[Group, Option]) -> int:
    """What a complete way costs beside its options."""
    total = 0
    for budget in task.budgets:
        if budget.soft is not None and sum(map(budget.taken, chosen.values())) > budget.soft:
            total += budget.penalty
    for common in task.commons:
        if dear_pair(common, chosen) is not None:
            total += common.penalty
    return total


def dear_pair(common: Common, chosen: dict[Group, Option]) -> Group | None:
    """Units on a common for which its penalty falls due: a pair, or one alone."""
    there = standing(common, chosen)
    single = next((unit for unit in there if unit in common.dear_alone), None)
    return (single,) if single is not None else _first(there, common.dear)


def never_pair(common: Common, chosen: dict[Group, Option]) -> Group | None:
    """Two units on a common that must never meet there."""
    return _first(standing(common, chosen), common.never)


def standing(common: Common, chosen: dict[Group, Option]) -> list[int]:
    """The units on a common, ascending."""
    return sorted(unit for group, option in chosen.items() if option[0] in common.sites for unit in group)


def _first(there: list[int], among: frozenset[Pair]) -> Group | None:
    if not among:
        return None
    return next(((a, b) for at, a in enumerate(there) for b in there[at + 1 :] if (a, b) in among), None)
