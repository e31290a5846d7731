"""A part of all ways -> what its best way costs at least, and a way to begin with.

Groups take sites of their own at least cost; those that may still join others may also stay out, for what joining adds at
least, their load included. What budgets forbid is priced: each unit of load costs so much (Lagrange), and the price at which the bound is highest is
found between one at which the budget is exceeded and one at which it is kept, where their two lines meet.
"""

from __future__ import annotations

from collections.abc import Callable

from rigc.record import Record
from rigc.solvers.assignment.node import Node
from rigc.solvers.assignment.problem import Budget, Group, Option, Placing
from rigc.solvers.cheapest_matching import OUT, Matching, Row

MOST_MEETINGS = 8  # lines that are met for one budget
MOST_ROUNDS = 3  # over all budgets, at the first part


class Relaxed(Record):
    """A way that may exceed budgets: `taken` has no entry for a group that stays out. `value` bounds every way of the node."""

    value: int
    taken: dict[Group, Option]
    uses: tuple[int, ...]
    prices: tuple[int, ...]
    site_prices: tuple[int, ...]
    sites: dict[Group, int]


class Bounding:
    """Finds the bound of a node; `see` is shown every way that comes up, `work` counts the costs looked at."""

    def __init__(self, task: Placing, node: Node, see: Callable[[dict[Group, Option]], None]) -> None:
        self.task, self.node, self.see, self.work = task, node, see, 0
        self.short: tuple[Group, ...] = ()
        self.options = {group: node.options(task, group) for group in node.groups}
        self.over: dict[int, list[tuple[int, Budget]]] = {}
        for at, budget in enumerate(task.budgets):
            for site in budget.sites:
                self.over.setdefault(site, []).append((at, budget))
        self.out: list[int | None] = []
        for group in node.groups:
            hosts = node.hosts(task, group)
            self.out.append(task.riding(group, hosts) if hosts else None)
        self.limits = tuple(node.limit(task, at) for at in range(len(task.budgets)))
        costs = [option[1] for options in self.options.values() for option in options]
        spread = max(costs, default=0) - min(costs, default=0) + max((each for each in self.out if each), default=0)
        self.steepest = (spread + 1) * (len(node.groups) + 1)

    def best(self, enough: int, rounds: int) -> Relaxed | None:
        """The highest bound found; None where the node has no way. It ends early once the bound has reached `enough`."""
        best = self._at(self.node.prices, self.node.site_prices, self.node.sites)
        for _ in range(rounds):
            if best is None or best.value >= enough:
                return best
            if self._too_much_together(best):
                return None
            before = best.value
            for at, limit in enumerate(self.limits):
                if best.uses[at] > limit or (best.prices[at] and best.uses[at] < limit):
                    higher = self._meet(best, at)
                    if higher is None:
                        return None
                    best = higher
            if best.value == before:
                break
        return best

    def _too_much_together(self, best: Relaxed) -> bool:
        """Whether the budgets that are exceeded, or priced, can't all be kept at once even by the lightest options."""
        pressed = [at for at, limit in enumerate(self.limits) if best.uses[at] > limit or best.prices[at]]
        if len(pressed) < 2:
            return False
        prices = tuple(self.steepest if at in pressed else 0 for at in range(len(self.limits)))
        lightest = self._at(prices, best.site_prices, best.sites)
        return lightest is None or sum(lightest.uses[at] - self.limits[at] for at in pressed) > 0

    def _meet(self, best: Relaxed, at: int) -> Relaxed | None:
        limit = self.limits[at]
        other = self._priced(best, at, self.steepest if best.uses[at] > limit else 0)
        if other is None:
            return None
        low, high = (best, other) if best.uses[at] > limit else (other, best)
        if high.uses[at] > limit:
            return None
        if low.uses[at] <= limit:
            return low
        for _ in range(MOST_MEETINGS):
            rise, fall = low.uses[at] - limit, high.uses[at] - limit
            meet = high.value - fall * high.prices[at] - low.value + rise * low.prices[at]
            price = meet // (rise - fall)
            if not low.prices[at] < price < high.prices[at]:
                break
            middle = self._priced(best, at, price)
            if middle is None:
                return None
            if middle.value >= low.value + rise * (price - low.prices[at]):
                return middle
            low, high = (middle, high) if middle.uses[at] > limit else (low, middle)
        return max(low, high, key=lambda each: each.value)

    def _priced(self, near: Relaxed, at: int, price: int) -> Relaxed | None:
        prices = (*near.prices[:at], price, *near.prices[at + 1 :])
        return self._at(prices, near.site_prices, near.sites)

    def _at(self, prices: tuple[int, ...], site_prices: tuple[int, ...], sites: dict[Group, int]) -> Relaxed | None:
        rows, chosen = self._rows(prices)
        groups = self.node.groups
        joins = [self._lightest(group, prices) for group in groups]
        out = [None if cost is None else cost + join[0] for cost, join in zip(self.out, joins, strict=True)]
        matching = Matching(rows, out, self.task.sites)
        matching.start_from([sites.get(group) for group in groups], list(site_prices))
        solved = matching.solve()
        self.work += matching.work
        if not solved:
            self.short = tuple(groups[row] for row in matching.short)
            return None
        of = {group: site for group, site in zip(groups, matching.of, strict=True) if site is not None}
        taken = {group: chosen[at][site] for at, (group, site) in enumerate(of.items()) if site != OUT}
        loads = [join[1] for join, site in zip(joins, matching.of, strict=True) if site == OUT and join[1] is not None]
        uses = tuple(
            sum(map(budget.taken, taken.values())) + (0 if budget.counts else sum(map(budget.taken, loads)))
            for budget in self.task.budgets
        )
        paid = sum(price * limit for price, limit in zip(prices, self.limits, strict=True))
        if len(taken) == len(groups):
            self.see(taken)
        return Relaxed(matching.cost - paid + self.node.fixed, taken, uses, prices, tuple(matching.prices), of)

    def _lightest(self, group: Group, prices: tuple[int, ...]) -> tuple[int, Option | None]:
        """The least that a group's load is priced wherever it joins others, and the option that it is."""
        if not any(prices):
            return 0, next(iter(self.options[group]), None)
        priced = [
            (sum(prices[at] * option[2] for at, budget in self.over.get(option[0], ()) if not budget.counts), option)
            for option in self.options[group]
        ]
        return min(priced, default=(0, None), key=lambda each: each[0])

    def _rows(self, prices: tuple[int, ...]) -> tuple[list[Row], list[dict[int, Option]]]:
        rows: list[Row] = []
        chosen: list[dict[int, Option]] = []
        for options in self.options.values():
            row: Row = {}
            best: dict[int, Option] = {}
            for option in options:
                site, cost = option[0], option[1]
                for at, budget in self.over.get(site, ()):
                    if prices[at]:
                        cost += prices[at] * (1 if budget.counts else option[2])
                if site not in row or cost < row[site]:
                    row[site] = cost
                    best[site] = option
            rows.append(row)
            chosen.append(best)
        return rows, chosen
