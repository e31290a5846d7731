"""How many ways each lead may take, and what each two cost each other -> the ways of all that cost least together."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

Costs = dict[tuple[int, int], tuple[tuple[int, ...], ...]]
"""For two leads, lower first: the cost of each way of the one with each way of the other. Only pairs that matter are in it."""


def chosen_ways(counts: Sequence[int], costs: Costs, exact: int) -> list[int]:
    """The number of each lead's way. Of equal sums, the earlier leads take their earlier ways.

    Leads that cost each other nothing are settled apart. A group of up to `exact` leads is settled for certain; in a
    larger one each lead in turn takes its best way until none changes any more.
    """
    chosen = [0] * len(counts)
    beside = _beside(len(counts), costs)
    for group in _groups(beside):
        _descend(group, counts, beside, chosen)
        if len(group) <= exact:
            _search(group, counts, beside, chosen)
    return chosen


def total(ways: Sequence[int], costs: Costs) -> int:
    """What a choice costs in all."""
    return sum(table[ways[one]][ways[other]] for (one, other), table in costs.items())


_Beside = list[dict[int, tuple[tuple[int, ...], ...]]]


def _beside(count: int, costs: Costs) -> _Beside:
    """For each lead its neighbours, with the cost of its own ways (rows) by theirs."""
    found: _Beside = [{} for _ in range(count)]
    for (one, other), table in costs.items():
        if len({cost for row in table for cost in row}) > 1:
            found[one][other] = table
            found[other][one] = tuple(zip(*table, strict=True))
    return found


def _groups(beside: _Beside) -> Iterator[list[int]]:
    seen: set[int] = set()
    for first, near in enumerate(beside):
        if first in seen or not near:
            continue
        group, waiting = set(), [first]
        while waiting:
            one = waiting.pop()
            if one not in group:
                group.add(one)
                waiting += beside[one]
        seen |= group
        yield sorted(group)


def _cost(one: int, way: int, near: dict[int, tuple[tuple[int, ...], ...]], chosen: dict[int, int] | list[int]) -> int:
    return sum(table[way][chosen[other]] for other, table in near.items() if other != one)


def _descend(group: list[int], counts: Sequence[int], beside: _Beside, chosen: list[int]) -> None:
    stale = set(group)
    while stale:
        for one in group:
            if one not in stale:  # beside it all is as it was when it took its best
                continue
            stale.discard(one)
            costs = [_cost(one, way, beside[one], chosen) for way in range(counts[one])]
            if min(costs) < costs[chosen[one]]:
                chosen[one] = costs.index(min(costs))
                stale.update(beside[one])


def _search(group: list[int], counts: Sequence[int], beside: _Beside, chosen: list[int]) -> None:
    """Tries all ways of a small group, and gives up a branch as soon as it can't become cheaper than the best."""
    place = {one: at for at, one in enumerate(group)}
    earlier = [{other: table for other, table in beside[one].items() if place[other] < place[one]} for one in group]
    least = [sum(min(map(min, table)) for table in each.values()) for each in earlier]
    rest = [sum(least[at:]) for at in range(len(group) + 1)]
    best = [sum(_cost(one, chosen[one], each, chosen) for one, each in zip(group, earlier, strict=True)) + 1]
    ways: dict[int, int] = {}

    def go(at: int, cost: int) -> None:
        if cost + rest[at] >= best[0]:
            return
        if at == len(group):
            best[0] = cost
            for one in group:
                chosen[one] = ways[one]
            return
        for way in range(counts[group[at]]):
            ways[group[at]] = way
            go(at + 1, cost + sum(table[way][ways[other]] for other, table in earlier[at].items()))

    go(0, 0)
