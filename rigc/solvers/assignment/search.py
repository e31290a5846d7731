"""Placing -> the cheapest way and the proof that there is none cheaper, or that there is none at all: branch and bound.

The part of all ways with the lowest bound is divided first; from there it goes straight down to a way. It counts the costs
that it looks at, the same on every machine, and ends at MOST_STEPS of them: then what it has is told as not proved.
"""

from __future__ import annotations

from heapq import heappop, heappush

from rigc.solvers.assignment.bound import MOST_ROUNDS, Bounding, Relaxed
from rigc.solvers.assignment.node import Node
from rigc.solvers.assignment.problem import Group, Option, Placed, Placing, dear_pair, never_pair, penalties

MOST_STEPS = 500_000
NODE_STEPS = 200  # what a part costs beside its costs looked at

Open = tuple[int, int, Node, Relaxed]


class Search:
    """One search; if only the `first` way is wanted, whatever it costs, it ends there. `best` is the cheapest way so far, `short`
    names groups that have too few sites (the first such finding)."""

    def __init__(self, task: Placing, most_steps: int | None = None, first: bool = False) -> None:
        self.first = first
        self.most_steps = MOST_STEPS if most_steps is None else most_steps
        self.steps = self.made = 0
        self.best: dict[Group, Option] | None = None
        self.cost = 0
        self.short: tuple[Group, ...] = ()
        self._known: dict[Group, tuple[Option, ...]] = {}
        self.task = task.replace(options=self._options)
        self._look_up = task.options

    def run(self) -> Placed:
        """The whole search."""
        heap: list[Open] = []
        here = self._opened(self._whole(), MOST_ROUNDS)
        while here is not None or heap:
            if here is None:
                here = heappop(heap)
            if self._settled(here[0]):
                here = None
                continue
            if self.steps >= self.most_steps:
                return self._ended(min([here[0], *(each[0] for each in heap)]), False)
            parts = [opened for part in self._divided(here) if (opened := self._opened(part, 1)) is not None]
            parts.sort(key=lambda each: each[:2])
            for each in parts[1:]:
                heappush(heap, each)
            here = parts[0] if parts else None
        return self._ended(self.cost, True)

    def _ended(self, bound: int, proved: bool) -> Placed:
        return Placed(self.best, self.cost, bound, proved, self.steps)

    def _options(self, group: Group) -> tuple[Option, ...]:
        if group not in self._known:
            self._known[group] = self._look_up(group)
            self.steps += len(self._known[group])
        return self._known[group]

    def _whole(self) -> Node:
        task = self.task
        groups = tuple((unit,) for unit in range(task.units))
        return Node(groups, frozenset(), {}, {}, frozenset(), 0, (0,) * len(task.budgets), (0,) * task.sites, {})

    def _opened(self, node: Node, rounds: int) -> Open | None:
        bounding = Bounding(self.task, node, self._see)
        enough = 0 if self.best is None else self.cost - self.task.grain + 1
        relaxed = bounding.best(enough if self.best is not None else 1 << 400, rounds)
        self.steps += bounding.work + NODE_STEPS
        if relaxed is None:
            self.short = self.short or bounding.short
            return None
        grain = self.task.grain
        bound = -(-relaxed.value // grain) * grain
        if self._settled(bound):
            return None
        self.made += 1
        carried = node.replace(prices=relaxed.prices, site_prices=relaxed.site_prices, sites=relaxed.sites)
        return bound, self.made, carried, relaxed

    def _settled(self, bound: int) -> bool:
        return self.best is not None and (self.first or bound >= self.cost)

    def _see(self, taken: dict[Group, Option]) -> None:
        task = self.task
        if any(sum(map(budget.taken, taken.values())) > budget.hard for budget in task.budgets):
            return
        if any(never_pair(common, taken) is not None for common in task.commons):
            return
        cost = sum(option[1] for option in taken.values()) + penalties(task, taken)
        if self.best is None or cost < self.cost:
            self.best, self.cost = dict(taken), cost

    def _divided(self, here: Open) -> list[Node]:
        node, taken = here[2], here[3].taken
        riders = [group for group in node.groups if group not in taken]
        if riders:
            return self._riders(node, riders)
        return (
            self._meetings(node, taken) or self._budgets(node, here[3]) or self._paid(node, taken) or self._spots(here)
        )

    def _riders(self, node: Node, riders: list[Group]) -> list[Node]:
        rider, hosts = min(((each, node.hosts(self.task, each)) for each in riders), key=lambda each: len(each[1]))
        parts = [node.joined(rider, host, hosts[:at]) for at, host in enumerate(hosts)]
        return [*parts, node.stays(rider, hosts)]

    def _meetings(self, node: Node, taken: dict[Group, Option]) -> list[Node]:
        for common in self.task.commons:
            meet = never_pair(common, taken)
            if meet is not None:
                return [node.kept_to(self.task, unit, common.sites, False) for unit in meet]
        return []

    def _budgets(self, node: Node, relaxed: Relaxed) -> list[Node]:
        """Divides by whether the largest taker of a budget that is exceeded, or priced, stands on its sites."""
        task = self.task
        for at, budget in enumerate(task.budgets):
            if relaxed.uses[at] > node.limit(task, at) or relaxed.prices[at]:
                loads = [
                    (budget.taken(option), group)
                    for group, option in relaxed.taken.items()
                    if budget.taken(option) and any(each[0] not in budget.sites for each in node.options(task, group))
                ]
                if loads:
                    unit = max(loads, key=lambda each: (each[0], *(-unit for unit in each[1])))[1][0]
                    return [node.kept_to(task, unit, budget.sites, inside) for inside in (False, True)]
        return []

    def _paid(self, node: Node, taken: dict[Group, Option]) -> list[Node]:
        task = self.task
        for at, budget in enumerate(task.budgets):
            if budget.soft is not None and at not in node.soft and sum(map(budget.taken, taken.values())) > budget.soft:
                within = node.replace(soft={**node.soft, at: True})
                return [within, node.replace(soft={**node.soft, at: False}, fixed=node.fixed + budget.penalty)]
        for at, common in enumerate(task.commons):
            dear = dear_pair(common, taken) if at not in node.paid else None
            if dear is not None:
                paid = node.replace(paid=node.paid | {at}, fixed=node.fixed + common.penalty)
                return [*(node.kept_to(task, unit, common.sites, False) for unit in dear), paid]
        return []

    def _spots(self, here: Open) -> list[Node]:
        """Where nothing else is left to divide by: whether a group with several spots stands where it is, or not."""
        node, taken = here[2], here[3].taken
        for group, option in taken.items():
            if len(node.options(self.task, group)) > 1:
                spot = option[0], option[3]
                return [node.kept_to_spot(self.task, group, spot, inside) for inside in (True, False)]
        return []
