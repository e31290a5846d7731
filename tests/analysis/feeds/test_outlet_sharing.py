"""Who may stand together on one outlet when the compiler chooses."""

from __future__ import annotations

import pytest
from power_rigs import feed, outlets, rig, supply, unit

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.load_limits import load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.model.rig import Rig
from rigc.model.things import Unit


def assigned(of: Rig) -> PowerAssignment:
    return power_assignment(of, load_limits(of), placement(of))


def places(power: PowerAssignment) -> dict[str, str]:
    return {each.unit: " ".join(port.jack for port in each.outlets) for each in power.feeds}


def test_the_source_may_let_others_share() -> None:
    """A digital unit may share where the source says so; by itself it would not, and three do not go on two outlets."""
    two = supply("s", outlets("o", 1, 2, (9, 100)))
    units = (unit("plumb", 30, "digital"), unit("lant", 70), unit("millpond", 22))
    assert assigned(rig(units, (two,), others=("s",))).unfed
    made = assigned(rig(units, (two,), others=("s",), may_share=(("plumb", "millpond"),)))
    assert not made.unfed
    assert places(made)["plumb"] == places(made)["millpond"]


def test_an_outlet_of_ones_own_is_preferred() -> None:
    """Two that may share don't where there is room."""
    two = supply("s", outlets("o", 1, 2, (9, 100)))
    made = assigned(rig((unit("a", 8), unit("b", 8)), (two,), chain="a b", others=("s",)))
    assert places(made) == {"a": "o1", "b": "o2"}


def test_a_chosen_unit_may_join_a_stated_one() -> None:
    """b's only way is to join its neighbour a, which the source has put on the only outlet."""
    one = supply("s", outlets("o", 1, 1, (9, 100)))
    made = assigned(rig((unit("a", 8), unit("b", 8)), (one,), feed("a", "s.o1"), chain="a b", others=("s",)))
    assert places(made) == {"a": "o1", "b": "o1"}
    assert [each.stated for each in made.feeds] == [True, False]
    assert {each.how for each in made.feeds} == {"shared"}


@pytest.mark.parametrize(
    "stranger",
    [
        unit("b", 8, "digital"),
        unit("b", 8, "high gain"),
        unit("b", 8, ground="positive"),
        unit("b", 8, ground=None),
        unit("b", None),
        unit("b", 73),  # 8 + 73 = 81 mA on an outlet of 80
    ],
    ids=["digital", "high gain", "positive", "ground unknown", "current unknown", "too much together"],
)
def test_who_never_shares_by_itself(stranger: Unit) -> None:
    """One outlet, two neighbours in the chain."""
    one = supply("s", outlets("o", 1, 1, (9, 80)))
    made = assigned(rig((unit("a", 8), stranger), (one,), chain="a b", others=("s",)))
    assert made.unfed


def test_positive_ground_keeps_off_a_shared_common() -> None:
    """o1 and o2 share a common: hedge there would join the other; it goes to o3, and the other two take the pair."""
    three = supply("s", outlets("o", 1, 2, (9, 100), common="pair"), outlets("o", 3, 3, (9, 100)))
    units = (unit("hedge", 2, ground="positive"), unit("a", 90), unit("b", 90))
    made = assigned(rig(units, (three,), others=("s",)))
    assert places(made)["hedge"] == "o3"
    assert not made.unfed


def test_who_shares_by_itself() -> None:
    """The same with b analogue, of ordinary gain, negative ground and just small enough: 8 + 56 = 64 = 80 % of 80 mA."""
    one = supply("s", outlets("o", 1, 1, (9, 80)))
    made = assigned(rig((unit("a", 8), unit("b", 56)), (one,), chain="a b", others=("s",)))
    assert places(made) == {"a": "o1", "b": "o1"}


def test_alone_is_alone() -> None:
    """`alone` forbids what the rule would allow, and what `may share` says."""
    one = supply("s", outlets("o", 1, 1, (9, 100)))
    units = (unit("a", 8), unit("b", 8))
    assert assigned(rig(units, (one,), chain="a b", others=("s",), alone=("a",))).unfed
    assert assigned(rig(units, (one,), chain="a b", others=("s",), alone=("a",), may_share=(("a", "b"),))).unfed
