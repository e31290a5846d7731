"""Meetings of many leads at once are those of each pair looked at alone, on boards of stretches thrown at random."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from rigc.analysis.routes.meetings import Pair, meetings
from rigc.analysis.routes.stretches import Side, Together, crossings, parallel_runs, side_of

WITHIN = 250.0


def alone(one: tuple[Side, ...], other: tuple[Side, ...]) -> Together | None:
    """What two leads do, reckoned without any of the others."""
    pairs = list(zip(one, other, strict=True))
    angles = tuple(sorted(angle for mine, theirs in pairs for angle in crossings(mine, theirs)))
    runs = [run for mine, theirs in pairs for run in parallel_runs(mine, theirs, WITHIN)]
    if not angles and not runs:
        return None
    return Together(angles, tuple(sorted(runs)))


def thrown(dice: random.Random, slanting: bool) -> tuple[Side, ...]:
    """A lead with a bent way on both sides of the deck, on a coarse grid: lanes are shared, ends and edges touch."""
    sides = []
    for _ in range(2):
        x, y = dice.randrange(12) * 100, dice.randrange(6) * 125
        way = [(float(x), float(y))]
        for _ in range(dice.randrange(4)):
            if slanting and dice.random() < 0.3:
                x, y = dice.randrange(12) * 100, dice.randrange(6) * 125
            elif dice.random() < 0.5:
                x = dice.randrange(12) * 100
            else:
                y = dice.randrange(6) * 125
            way.append((float(x), float(y)))
        sides.append(side_of(tuple(pairwise(way))))
    return tuple(sides)


@pytest.mark.parametrize("slanting", [False, True])
@pytest.mark.parametrize("seed", range(40))
def test_all_at_once_is_each_pair_alone(seed: int, slanting: bool) -> None:
    dice = random.Random(seed)
    sides = [thrown(dice, slanting) for _ in range(24)]
    ones, others = range(0, 24, 2), range(1, 24, 2)
    wanted: dict[Pair, Together] = {}
    for one in ones:
        for other in others:
            met = alone(sides[one], sides[other])
            if met is not None:
                wanted[one, other] = met
    found = meetings(sides, ones, others, WITHIN)
    assert wanted
    assert {pair: Together(tuple(sorted(met.angles)), tuple(sorted(met.runs))) for pair, met in found.items()} == wanted


def test_two_leads_in_one_lane_and_one_across() -> None:
    """In tenths: 0 runs along y 0 from 0 to 1000; 1 along y 100 from 400 to 1400, beside it for 600; 2 along x 500 crosses both."""
    along = [((0.0, 0.0), (1000.0, 0.0)), ((400.0, 100.0), (1400.0, 100.0)), ((500.0, -300.0), (500.0, 300.0))]
    sides = [(side_of((each,)),) for each in along]
    assert meetings(sides, (0,), (1, 2), WITHIN) == {
        (0, 1): Together((), ((600.0, 100.0),)),
        (0, 2): Together((90.0,), ()),
    }


def test_nothing_meets_nothing() -> None:
    assert meetings([], (), (), WITHIN) == {}
