"""What a unit adds at the least when it joins others, by hand: a bound of the search, which must never lie above what it does add."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest
from power_rigs import feed, outlets, rig, supply, unit

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.choice.open_outlets import open_problem, stated_taps
from rigc.analysis.feeds.choice.order_of_merit import SHARE_PARTS, Levels, Scale
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import cheapest_placing
from rigc.analysis.feeds.load_limits import load_limits
from rigc.model.rig import Rig
from rigc.solvers.assignment.problem import Placing

UNITS = ("a", "b", "c", "d")
OUTLETS = (supply("s", outlets("o", 1, 4, (9, 500))),)


def made(groups: str, *feeds: Any, units: tuple[str, ...] = UNITS) -> tuple[OutletProblem, Placing]:
    """Units of 10 mA each, of which those in a group (`abc ad`) may share."""
    built: Rig = rig(
        tuple(unit(name, 10, "analogue") for name in units),
        OUTLETS,
        *feeds,
        others=("s",),
        may_share=tuple(tuple(group) for group in groups.split()),
    )
    problem = open_problem(built, stated_taps(built), placement(built))
    return problem, cheapest_placing(problem, load_limits(built))


@pytest.mark.parametrize(
    ("groups", "feeds", "group", "host", "parts"),
    [
        # two share: both count, so who joins adds two units' worth
        ("ab", (), "a", "b", 120),
        # a may share with b and with c, who may not with each other: never more than two together
        ("ab ac", (), "a", "b", 120),
        # three together: three count, by two who join: one and a half each
        ("abc", (), "a", "b", 90),
        # four together: four count, by three who join
        ("abcd", (), "a", "b", 80),
        # joined to two who share already, one more counts
        ("abcd", (), "a", "bc", 60),
        # two who share already join one alone: he counts now too
        ("abcd", (), "ab", "c", 60),
        # and joined to others who share, they add nothing
        ("abcd", (), "ab", "cd", 0),
        # b may stand beside d, whom the source states on o1: a who joins b there adds himself alone
        ("ab bd", ("d",), "a", "b", 60),
    ],
)
def test_the_share_of_one_who_joins(groups: str, feeds: tuple[str, ...], group: str, host: str, parts: int) -> None:
    problem, task = made(groups, *(feed(name, "s.o1") for name in feeds))
    at = {each.name: number for number, each in enumerate(problem.units)}
    joining, there = (tuple(sorted(at[name] for name in names)) for names in (group, host))
    own = sum(min(cost for _, cost, *_ in task.options((each,))) for each in joining)
    assert task.riding(joining, (there,)) - own == parts * Scale(problem).pack(Levels(sharing=1))


@pytest.mark.parametrize("groups", ["ab", "abc", "abcd", "ab ac", "ab bc cd", "abc bcd", "abc cd"])
def test_no_bound_lies_above_what_it_bounds(groups: str) -> None:
    """Whoever comes first and whoever joins, one after the other: the sum of the bounds is at most what the group costs together."""
    _, task = made(groups)
    for size in (2, 3, 4):
        for group in combinations(range(len(UNITS)), size):
            options = task.options(group)
            if not options or any(two not in task.partners[one] for one, two in combinations(group, 2)):
                continue
            for first in group:
                others = tuple(each for each in group if each != first)
                least = min(cost for _, cost, *_ in task.options((first,)))
                least += sum(task.riding((each,), ((first,),)) for each in others)
                assert least <= min(cost for _, cost, *_ in options), (group, first)


def test_the_parts_of_a_unit_that_shares_divide_by_all_sizes_of_a_group() -> None:
    assert [SHARE_PARTS % size for size in (1, 2, 3, 4, 5, 6)] == [0] * 6
