"""The choice of ways against trying every combination, on random small boards; crossings against shapely."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, product
from random import Random

from shapely import LineString

from rigc.analysis.leads.lengths.below_deck import lane_way
from rigc.analysis.routes.stretches import Side, crossings, parallel_runs, side_of
from rigc.analysis.routes.way_choice import Costs, chosen_ways, total

EMPTY = side_of(())
Way = tuple[tuple[int, int], ...]
Pairs = list[tuple[int, int]]


def ways(source: Random) -> tuple[Way, ...]:
    """The ways of a lead on a small deck with three drop lines: its two lanes and one between."""
    start, end = ((source.randrange(0, 300, 10), source.choice((50, 150, 250))) for _ in range(2))
    lanes = dict.fromkeys((start[1], end[1], (start[1] + end[1]) // 2))
    return tuple(dict.fromkeys(lane_way(start, end, lane) for lane in lanes))


def below(way: Way) -> Side:
    return side_of(tuple(pairwise(way)))


def bad(one: Way, other: Way) -> int:
    """The same as rigc counts it."""
    return sum(angle == 0 for angle in crossings(below(one), below(other)))


def flat(one: Way, other: Way) -> int:
    """How often two ways lie on each other, by shapely: each two stretches along one axis that share more than a point."""
    stretches = ((LineString(here), LineString(there)) for here in pairwise(one) for there in pairwise(other))
    return sum(here.intersection(there).length > 0 for here, there in stretches)


def test_no_choice_of_ways_has_fewer_bad_crossings() -> None:
    source, unavoidable, saved = Random(3), 0, 0
    for _ in range(30):
        leads = [ways(source) for _ in range(6)]
        pairs = [(one, other) for other in range(6) for one in range(other) if one % 2 != other % 2]
        costs: Costs = {
            (one, other): tuple(tuple(bad(a, b) for b in leads[other]) for a in leads[one]) for one, other in pairs
        }
        chosen = chosen_ways([len(each) for each in leads], costs, 10)
        lying = {
            (one, other, a, b): flat(leads[one][a], leads[other][b])
            for one, other in pairs
            for a in range(len(leads[one]))
            for b in range(len(leads[other]))
        }

        def told(
            choice: Sequence[int], lying: dict[tuple[int, int, int, int], int] = lying, pairs: Pairs = pairs
        ) -> int:
            return sum(lying[one, other, choice[one], choice[other]] for one, other in pairs)

        fewest = min(map(told, product(*(range(len(each)) for each in leads))))
        assert told(chosen) == total(chosen, costs) == fewest
        unavoidable += fewest > 0
        saved += fewest < told((0,) * 6)
    assert unavoidable > 2 and saved > 2  # choosing helped, and it was not always possible to avoid all


def test_a_large_group_never_ends_worse_than_it_began() -> None:
    source = Random(5)
    costs: Costs = {
        (one, other): tuple(tuple(source.randrange(9) for _ in range(3)) for _ in range(3))
        for other in range(30)
        for one in range(other)
    }
    chosen = chosen_ways([3] * 30, costs, 10)
    assert total(chosen, costs) < total([0] * 30, costs)
    for one in range(30):  # no lead alone does better
        for way in range(3):
            assert total([*chosen[:one], way, *chosen[one + 1 :]], costs) >= total(chosen, costs)


def test_of_equal_ways_the_first_is_taken() -> None:
    assert chosen_ways([3, 3], {(0, 1): ((2, 2, 2),) * 3}, 10) == [0, 0]
    assert chosen_ways([2, 2], {(0, 1): ((5, 1), (1, 1))}, 10) == [0, 1]  # of three cheap ways


def test_crossings_against_shapely() -> None:
    source, crossed = Random(11), 0
    for _ in range(300):
        one, other = (tuple((source.randrange(0, 60), source.randrange(0, 60)) for _ in range(3)) for _ in range(2))
        mine, theirs = LineString(one), LineString(other)
        if mine.intersection(theirs).length > 0 or one[0] == one[1] or other[0] == other[1]:
            continue
        found = list(crossings(below(one), below(other)))
        assert bool(found) == mine.intersects(theirs)
        assert all(0 < angle <= 90 for angle in found)
        crossed += bool(found)
    assert crossed > 50


def test_angles_and_runs_by_hand() -> None:
    along = side_of((((0, 0), (100, 0)),))
    assert list(crossings(along, side_of((((50, -5), (50, 5)),)))) == [90]
    assert [round(each) for each in crossings(along, side_of((((40, -10), (60, 10)),)))] == [45]
    assert list(crossings(along, side_of((((50, 0), (150, 0)),)))) == [0]  # one lies on the other for 50
    assert list(crossings(along, side_of((((100, 0), (150, 0)),)))) == []  # they only touch end to end
    assert list(parallel_runs(along, side_of((((80, 25), (200, 25)),)), 25)) == [(20, 25)]
    assert list(parallel_runs(along, side_of((((80, 26), (200, 26)),)), 25)) == []
    assert list(parallel_runs(along, EMPTY, 25)) == []
