"""The search on published problems, and where it ends before it knows."""

from __future__ import annotations

from itertools import permutations

import pytest

from rigc.solvers.assignment.problem import Budget, Common, Group, Option, Placed, Placing
from rigc.solvers.assignment.search import Search

# Generalised assignment, problem set gap1, problem 1: 5 outlets, 15 units. J. E. Beasley's OR-Library
# (people.brunel.ac.uk/~mastjjb/jeb/orlib/gapinfo.html); its maximum, 336, is published there. The minimum, 261, is not
# published: it was found by an integer programming solver (a run, no publication).
GRAIN = 1024  # room for prices below a cost of 1
CAPACITY = (36, 34, 38, 27, 33)
COSTS = """
17 21 22 18 24 15 20 18 19 18 16 22 24 24 16
23 16 21 16 17 16 19 25 18 21 17 15 25 17 24
16 20 16 25 24 16 17 19 19 18 20 16 17 21 24
19 19 22 22 20 16 19 17 21 19 25 23 25 25 25
18 19 15 15 21 25 16 16 23 15 22 17 19 22 24
"""
LOADS = """
8 15 14 23 8 16 8 25 9 17 25 15 10 8 24
15 7 23 22 11 11 12 10 17 16 7 16 10 18 22
21 20 6 22 24 10 24 9 21 14 11 14 11 19 16
20 11 8 14 9 5 6 19 19 7 6 6 13 9 18
8 13 13 13 10 20 25 16 16 17 10 10 5 12 23
"""


def numbers(text: str) -> list[list[int]]:
    return [[int(word) for word in line.split()] for line in text.strip().splitlines()]


def supplies_of_places(costs: list[list[int]], loads: list[list[int]], capacity: tuple[int, ...]) -> Placing:
    """As a rig: each supply has a place of its own for every unit, and its capacity is what all its places give together."""
    units = len(costs[0])

    def options(group: Group) -> tuple[Option, ...]:
        return tuple(
            (supply * units + group[0], costs[supply][group[0]] * GRAIN, loads[supply][group[0]], 0)
            for supply in range(len(capacity))
        )

    budgets = tuple(
        Budget(frozenset(range(supply * units, (supply + 1) * units)), most) for supply, most in enumerate(capacity)
    )
    return Placing(
        units, units * len(capacity), options, (frozenset(),) * units, lambda _group, _hosts: 0, budgets, (), GRAIN
    )


def supply_of(found: Placed, units: int) -> list[int]:
    assert found.options is not None
    return [found.options[(unit,)][0] // units for unit in range(units)]


@pytest.mark.parametrize(("most", "expected"), [(False, 261), (True, 336)])
def test_generalised_assignment(most: bool, expected: int) -> None:
    """Least and greatest total, proved; the capacities are kept."""
    costs, loads = numbers(COSTS), numbers(LOADS)
    signed = [[30 - cost for cost in row] for row in costs] if most else costs
    found = Search(supplies_of_places(signed, loads, CAPACITY), most_steps=2_000_000).run()  # harder than any board
    where = supply_of(found, 15)
    assert found.proved and found.bound == found.cost
    assert sum(costs[supply][unit] for unit, supply in enumerate(where)) == expected
    for supply, capacity in enumerate(CAPACITY):
        assert sum(loads[supply][unit] for unit in range(15) if where[unit] == supply) <= capacity


def test_published_way_is_a_maximum() -> None:
    """One way of the maximum: outlets 2 2 4 3 1 5 1 2 1 4 4 4 1 5 3."""
    costs, loads = numbers(COSTS), numbers(LOADS)
    where = [number - 1 for number in (2, 2, 4, 3, 1, 5, 1, 2, 1, 4, 4, 4, 1, 5, 3)]
    assert sum(costs[supply][unit] for unit, supply in enumerate(where)) == 336
    taken = [sum(loads[at][unit] for unit in range(15) if where[unit] == at) for at in range(5)]
    assert all(each <= most for each, most in zip(taken, CAPACITY, strict=True))


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_linear_sum_assignment(order: tuple[int, ...]) -> None:
    """The example of the SciPy documentation (scipy.optimize.linear_sum_assignment): 5, with columns 1, 0, 2."""
    costs = [[4, 1, 3], [2, 0, 5], [3, 2, 2]]
    task = Placing(
        3,
        3,
        lambda group: tuple((column, costs[order[group[0]]][column], 0, 0) for column in range(3)),
        (frozenset(),) * 3,
        lambda _group, _hosts: 0,
    )
    found = Search(task).run()
    assert found.options is not None and (found.cost, found.proved) == (5, True)
    assert {order[unit]: option[0] for (unit,), option in found.options.items()} == {0: 1, 1: 0, 2: 2}


@pytest.mark.parametrize("steps", [1, 20_000, 100_000, 300_000])
def test_a_search_that_is_cut_short_says_what_is_left(steps: int) -> None:
    """It never claims a proof, and its bound is never above the least total, nor its cost below."""
    found = Search(supplies_of_places(numbers(COSTS), numbers(LOADS), CAPACITY), most_steps=steps).run()
    assert not found.proved
    assert found.bound <= 261 * GRAIN
    assert found.options is None or found.cost >= 261 * GRAIN
    assert steps == 1 or found.bound > 240 * GRAIN


def test_no_way_is_proved() -> None:
    """Each outlet is given a sixth of what the lightest way takes; five sixths of it are too little."""
    loads = numbers(LOADS)
    lightest = sum(min(row[unit] for row in loads) for unit in range(15))
    found = Search(supplies_of_places(numbers(COSTS), loads, (lightest // 6,) * 5)).run()
    assert (found.options, found.proved) == (None, True)


def test_a_common_keeps_some_apart_and_makes_others_pay() -> None:
    """Three units, four sites of which the first three are one common and cost nothing; the fourth costs 5. Units 0 and 1 never
    meet: one of them goes to the fourth. Units 1 and 2 meet at 3: cheaper than nothing else, as 0 can be the one that goes."""
    costs = (0, 0, 0, 5)
    task = Placing(
        3,
        4,
        lambda _group: tuple((site, cost, 0, 0) for site, cost in enumerate(costs)),
        (frozenset(),) * 3,
        lambda _group, _hosts: 0,
        commons=(Common(frozenset((0, 1, 2)), frozenset({(0, 1)}), frozenset({(1, 2)}), penalty=3),),
    )
    found = Search(task).run()
    assert found.options is not None
    assert (found.cost, found.options[(1,)][0]) == (5, 3)
