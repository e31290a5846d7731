"""Cutting from reels and rolls: against published instances, plans whose optimum is known by how they were made, and plain search."""

from __future__ import annotations

from collections import Counter
from random import Random

import pytest

from rigc.solvers.cutting.demand import demand
from rigc.solvers.cutting.first_fit import first_fit
from rigc.solvers.cutting.plan import CuttingPlan, cutting_plan

# V. Chvátal, Linear Programming (1983), chapter 13: raws of 100, LP bound 452.25, 453 raws.
TEXTBOOK = (45,) * 97 + (36,) * 610 + (31,) * 395 + (14,) * 211

# OR-Library (J. E. Beasley), binpack1, problem u120_00 (E. Falkenauer): capacity 150, 120 pieces, best known 48.
U120_00 = """20 23x2 24 25x2 26 27x2 28 29 30x3 32x2 33x3 35 36x3 37 38x3 39x2 41x3 42x5 43x4 44x2 45x2 46x2 47 49x3 50 55x3 57x4
58x3 59 60x2 62x2 64 66 67 69x3 70x3 71 72 73x4 74x2 76 78x4 79x2 80x3 81 82x2 83x2 84x5 85x2 86 87 90 91x2 92 93x2 94 96x2 98x3"""

# A general reference's cutting stock example (from memory): raws of 5600, LP bound 72.9167, 73 raws.
WIDTHS = (1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200)
TIMES = (22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20)


def proven(plan: CuttingPlan) -> bool:
    """Whether fewer raws are impossible."""
    return len(plan.raws) == plan.least


def u120_00() -> tuple[int, ...]:
    counted = (word.partition("x") for word in U120_00.split())
    return tuple(int(size) for size, _, count in counted for _ in range(int(count or 1)))


def holds(plan: CuttingPlan, pieces: tuple[int, ...]) -> None:
    """Every piece is cut once, no raw is longer than it is, and the bound is below."""
    assert Counter(piece for raw in plan.raws for piece in raw) == Counter(pieces)
    assert all(sum(raw) <= plan.length for raw in plan.raws)
    assert plan.bound <= plan.least + 1e-9
    assert plan.least <= len(plan.raws)


def test_the_textbook_problem() -> None:
    plan = cutting_plan(100, TEXTBOOK)
    holds(plan, TEXTBOOK)
    assert plan.bound == pytest.approx(452.25, abs=1e-4)
    assert (len(plan.raws), proven(plan)) == (453, True)


def test_falkenauers_first_problem_of_120_pieces() -> None:
    pieces = u120_00()
    assert (len(pieces), sum(pieces)) == (120, 7078)
    assert len(first_fit(demand(150, pieces))) == 49  # first-fit decreasing needs one more than the best
    plan = cutting_plan(150, pieces)
    holds(plan, pieces)
    assert (len(plan.raws), proven(plan)) == (48, True)  # 7078 / 150 = 47.19, so that 48 is the least


def test_thirteen_widths() -> None:
    pieces = tuple(width for width, times in zip(WIDTHS, TIMES, strict=True) for _ in range(times))
    plan = cutting_plan(5600, pieces)
    holds(plan, pieces)
    assert plan.bound == pytest.approx(72.9167, abs=1e-3)
    assert len(plan.raws) == 73


@pytest.mark.parametrize("seed", range(8))
def test_triplets_that_fill_their_raws(seed: int) -> None:
    """Each raw is split into three at random, each part above a quarter: so many raws are needed, and they will do."""
    pieces = triplets(Random(seed), 12)
    plan = cutting_plan(1000, pieces)
    holds(plan, pieces)
    assert (len(plan.raws), proven(plan)) == (12, True)
    assert {sum(raw) for raw in plan.raws} == {1000}


def test_where_the_search_is_given_up_the_bound_is_told() -> None:
    """60 triplets: too many to be settled; the plan is one off at most, and says that it is not proven."""
    pieces = triplets(Random(1), 60)
    plan = cutting_plan(1000, pieces)
    holds(plan, pieces)
    assert plan.least == 60
    assert len(plan.raws) <= 61
    assert proven(plan) == (len(plan.raws) == 60)


def test_small_ones_against_plain_search() -> None:
    """First-fit is beaten in some of them, and in some the bound is reached by proving that fewer are impossible."""
    beaten = 0
    for seed in range(200):
        random = Random(seed)
        length = random.randint(20, 40)
        pieces = tuple(random.randint(length // 6, length // 2) for _ in range(random.randint(7, 9)))
        plan = cutting_plan(length, pieces)
        holds(plan, pieces)
        assert len(plan.raws) == searched(length, pieces), seed
        assert proven(plan), seed
        beaten += len(first_fit(demand(length, pieces))) > len(plan.raws)
    assert beaten > 5


def test_fewer_can_be_impossible_though_the_bound_allows_it() -> None:
    """By their length alone two raws of 90 would do."""
    pieces = (44, 44, 43, 26, 23)
    assert sum(pieces) == 2 * 90  # two raws would have to be full, but no parts of these make 90
    plan = cutting_plan(90, pieces)
    holds(plan, pieces)
    assert (len(plan.raws), plan.least, proven(plan)) == (3, 3, True)


def test_pieces_that_no_raw_holds_are_told() -> None:
    plan = cutting_plan(100, (120, 60, 101, 40, 100))
    assert plan.too_long == (120, 101)
    assert sorted(plan.raws) == [(60, 40), (100,)]


def test_nothing_to_cut() -> None:
    assert (cutting_plan(100, ()).raws, cutting_plan(100, ()).least) == ((), 0)


def triplets(random: Random, raws: int) -> tuple[int, ...]:
    """The parts of so many raws of 1000, mixed."""
    pieces = []
    for _ in range(raws):
        first = random.randint(251, 498)
        second = random.randint(251, 1000 - first - 251)
        pieces += [first, second, 1000 - first - second]
    random.shuffle(pieces)
    return tuple(pieces)


def searched(length: int, pieces: tuple[int, ...], rooms: tuple[int, ...] = ()) -> int:
    """The least number of raws, by trying every raw for every piece."""
    if not pieces:
        return len(rooms)
    first, rest = pieces[0], pieces[1:]
    tries = [searched(length, rest, (*rooms, length - first))]
    for at in {room: at for at, room in enumerate(rooms) if room >= first}.values():
        tries.append(searched(length, rest, (*rooms[:at], rooms[at] - first, *rooms[at + 1 :])))
    return min(tries)
