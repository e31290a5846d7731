"""Rigs on which a blind search would not end, or on which ours is cut short."""

from __future__ import annotations

import pytest
from power_rigs import outlets, rig, supply, unit

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.choice.conflict_set import conflict_set
from rigc.analysis.feeds.choice.open_outlets import open_problem, stated_taps
from rigc.analysis.feeds.choice.problem_in_numbers import any_placing
from rigc.analysis.feeds.load_limits import HARD, load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.model.rig import Rig
from rigc.solvers.assignment.search import Search

TWO_TIGHT = rig(
    tuple(unit(f"u{at}", 90 + at) for at in range(6)),
    (
        supply("s", outlets("o", 1, 4, (9, 100)), milliamps=280),
        supply("t", outlets("o", 1, 4, (9, 100)), milliamps=280),
    ),
    others=("s", "t"),
)


def assigned(made: Rig) -> PowerAssignment:
    return power_assignment(made, load_limits(made), placement(made))


def test_same_rig_same_steps() -> None:
    """The choice and the count of its steps do not depend on anything but the rig."""
    assert assigned(TWO_TIGHT) == assigned(TWO_TIGHT)


def test_many_alike_without_a_way() -> None:
    """Forty-one units on forty outlets: a blind search would try forty factorial ways. All of them are to blame."""
    units = tuple(unit(f"u{at}", 10) for at in range(41))
    made = rig(units, (supply("s", outlets("o", 1, 40, (9, 100))),), others=("s",))
    problem = open_problem(made, stated_taps(made), placement(made))
    found = Search(any_placing(problem, HARD), first=True).run()
    assert (found.options, found.proved) == (None, True)
    blamed = conflict_set(made, problem, HARD)
    assert (len(blamed.units), len(blamed.outlets)) == (41, 40)


def test_a_tight_ceiling_does_not_explode() -> None:
    """Twenty units of 90 mA and a ceiling for nineteen and a half: the steps are few, not 20 factorial."""
    made = rig(
        tuple(unit(f"u{at}", 90) for at in range(20)),
        (supply("s", outlets("o", 1, 25, (9, 100)), milliamps=19.5 * 90),),
        others=("s",),
    )
    problem = open_problem(made, stated_taps(made), placement(made))
    found = Search(any_placing(problem, HARD), first=True).run()
    assert (found.options, found.proved) == (None, True)
    assert found.steps < 20_000


def test_two_tight_ceilings_leave_no_way() -> None:
    """90 to 95 mA, six of them, three to a supply of 280 mA: 90 + 91 + 92 = 273 fits, 93 + 94 + 95 = 282 does not, and every
    other division has a half of at least 555 / 2 = 277.5, so of 278 at least: 278 + 277 is one, both below 280."""
    power = assigned(TWO_TIGHT)
    assert power.proved and not power.unfed
    halves = {"s": 0.0, "t": 0.0}
    for port, load in power.loads.items():
        halves[port.thing] += load.known_ma
    assert sorted(halves.values()) in ([277, 278], [276, 279], [275, 280])


def test_cut_short_before_any_way_it_does_not_know(monkeypatch: pytest.MonkeyPatch) -> None:
    """After the most steps it says that it does not know, and never that there is no way."""
    monkeypatch.setattr("rigc.solvers.assignment.search.MOST_STEPS", 3)
    power = assigned(TWO_TIGHT.replace(supplies={
        name: each.replace(ceiling_ma=each.ceiling_ma and each.ceiling_ma.replace(value=278.0))
        for name, each in TWO_TIGHT.supplies.items()
    }))  # fmt: skip
    assert [each.why for each in power.unfed] == ["undecided"]
    assert not power.proved
