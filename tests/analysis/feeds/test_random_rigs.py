"""Three hundred rigs at random against an independent exact solver: HiGHS, by scipy.optimize.milp (in tests only)."""

from __future__ import annotations

from functools import lru_cache

import pytest
from exact_by_highs import Program
from random_power_rigs import random_rig

from rigc.analysis.feeds.choice.conflict_set import conflict_set
from rigc.analysis.feeds.choice.open_outlets import open_problem, stated_taps
from rigc.analysis.feeds.choice.order_of_merit import Levels, Scale
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import any_placing, cheapest_placing
from rigc.analysis.feeds.load_limits import HARD, LoadLimits, load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.analysis.power.mends.smallest_changes import mending_changes
from rigc.solvers.assignment.search import Search

SLOW = pytest.mark.slow
BLOCKS = [pytest.param(at, marks=() if at < 3 else SLOW) for at in range(15)]
SIZE = 20


@lru_cache(maxsize=64)
def problem_of(seed: int) -> tuple[OutletProblem, LoadLimits]:
    made, places = random_rig(seed)
    return open_problem(made, stated_taps(made), places), load_limits(made)


def assigned(seed: int) -> PowerAssignment:
    made, places = random_rig(seed)
    return power_assignment(made, load_limits(made), places)


def ours(seed: int) -> tuple[int, ...] | None:
    problem, limits = problem_of(seed)
    found = Search(cheapest_placing(problem, limits)).run()
    assert found.proved, seed
    if found.options is None:
        return None
    levels: Levels = Scale(problem).unpack(found.cost)
    return levels.warnings, levels.sharing, levels.strangers, levels.moves, levels.length_mm, levels.names


@pytest.mark.parametrize("block", BLOCKS)
def test_same_objective_as_highs(block: int) -> None:
    """Every level of the objective is the same for each rig, or both find that there is no way."""
    for seed in range(block * SIZE, (block + 1) * SIZE):
        assert ours(seed) == Program(*problem_of(seed)).solve(), seed


@pytest.mark.slow
def test_larger_rigs() -> None:
    """Up to 14 units on up to 12 outlets."""
    for seed in range(1000, 1030):
        made, places = random_rig(seed, 14, 12)
        problem, limits = open_problem(made, stated_taps(made), places), load_limits(made)
        found = Search(cheapest_placing(problem, limits)).run()
        levels = Scale(problem).unpack(found.cost)
        expected = Program(problem, limits).solve()
        assert found.proved
        assert (expected is None) == (found.options is None), seed
        assert expected is None or expected[:5] == (
            levels.warnings, levels.sharing, levels.strangers, levels.moves, levels.length_mm
        ), seed  # fmt: skip


def test_the_random_rigs_have_all_sorts() -> None:
    """Else agreement would say little: a third at least without a way, a third with; some with each cost."""
    found = [ours(seed) for seed in range(120)]
    ways = [each for each in found if each is not None]
    assert 40 <= len(ways) <= 80
    for level, name in enumerate(Levels.FIELDS):
        assert sum(each[level] > 0 for each in ways) >= 2, name


def infeasible(problem: OutletProblem, limits: LoadLimits) -> bool:
    """By HiGHS, with everything beyond the limits forbidden."""
    return Program(problem, limits, strict=True).solve() is None


@pytest.mark.parametrize("rule", ["bare ratings", "rules of thumb"])
@pytest.mark.parametrize("block", [pytest.param(at, marks=() if at < 2 else pytest.mark.long) for at in range(5)])
def test_each_conflict_set_is_one_and_is_tight(block: int, rule: str) -> None:
    """HiGHS finds no way for the set, and one for it without any one member."""
    seen = 0
    for seed in range(block * 60, (block + 1) * 60):
        made, _ = random_rig(seed)
        problem, limits = problem_of(seed)
        limits = HARD if rule == "bare ratings" else limits.replace(total_pct=100.0)
        if Search(any_placing(problem, limits), first=True).run().options is not None:
            continue
        seen += 1
        names = conflict_set(made, problem, limits).units
        members = tuple(unit for unit in problem.units if unit.name in names)
        assert infeasible(problem.replace(units=members), limits), (seed, names)
        for unit in members:
            fewer = tuple(each for each in members if each is not unit)
            assert not infeasible(problem.replace(units=fewer), limits), (seed, names, unit.name)
    assert seen >= 15


def test_units_left_over_are_those_of_the_sets() -> None:
    """Each unit that is open is fed, or stands in exactly one set; feeds keep to the ratings."""
    for seed in range(60):
        power = assigned(seed)
        problem, _ = problem_of(seed)
        left = [name for each in power.unfed for name in each.units]
        fed = [feed.unit for feed in power.feeds if not feed.stated]
        reserved = [f"reserve: {text}" for text in power.reserved.values()]
        assert sorted([*left, *fed, *reserved]) == sorted(unit.name for unit in problem.units), seed


def test_each_proposed_mend_mends() -> None:
    """Every set has one to three, and HiGHS finds a way for the set's units (and those that the change sets free) after each."""
    tried = 0
    for seed in range(40):
        made, places = random_rig(seed)
        before = {unit.name for unit in problem_of(seed)[0].units}
        for unfed in assigned(seed).unfed:
            if not any(name in made.units for name in unfed.units):
                continue
            changes = mending_changes(made, places, HARD, unfed)
            assert 1 <= len(changes) <= 4, seed
            for change in changes:
                problem = open_problem(change.rig, stated_taps(change.rig), places)
                units = tuple(each for each in problem.units if each.name in unfed.units or each.name not in before)
                assert not infeasible(problem.replace(units=units), HARD), (seed, change.words)
                tried += 1
    assert tried >= 20
