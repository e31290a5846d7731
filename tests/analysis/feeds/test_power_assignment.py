"""Which outlet feeds which unit: stated feeds are kept, the rest is chosen, and what can't be is told."""

from __future__ import annotations

from itertools import permutations

import pytest
from cases import ROOT, results
from power_rigs import fact, feed, outlets, rig, supply, unit
from written import written

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.load_limits import load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.model.jacks import Connector
from rigc.model.rig import Rig

MILL5 = supply("mill5", outlets("o", 1, 3, (9, 100)), outlets("o", 4, 5, (9, 250)), watts=6)
BEDROOM = (
    unit("plumb", 30, "digital"),
    unit("hedge", 2, "high gain", ground="positive"),
    unit("marl", 8),
    unit("millpond", 22),
    unit("lant", 120, "digital"),
    unit("rotunda", 160, "digital"),
)
CHAIN = "plumb hedge marl millpond lant rotunda"


def assigned(of: Rig) -> PowerAssignment:
    return power_assignment(of, load_limits(of), placement(of))


def places(power: PowerAssignment) -> dict[str, str]:
    return {each.unit: " ".join(port.jack for port in each.outlets) for each in power.feeds}


def test_stated_feeds_are_kept() -> None:
    """Even those that the checks will complain of."""
    made = assigned(rig(BEDROOM, (MILL5,), feed("hedge marl", "mill5.o1", "shared"), feed("rotunda", "mill5.o3")))
    assert places(made) == {"hedge": "o1", "marl": "o1", "rotunda": "o3"}
    assert all(each.stated for each in made.feeds)
    hedge = made.of("hedge")
    assert hedge is not None and hedge.how == "shared"


def test_back_bedroom_left_free() -> None:
    """The invariants of the worked rig: six units on five outlets, the positive-ground one alone, only the two analogue
    neighbours share, the two digital ones on the stronger outlets (120/250 = 48 %, 160/250 = 64 %)."""
    made = assigned(rig(BEDROOM, (MILL5,), chain=CHAIN, others=("mill5",)))
    where = places(made)
    assert not made.unfed
    assert set(where) == {each.name for each in BEDROOM}
    assert set(where.values()) == {"o1", "o2", "o3", "o4", "o5"}
    assert where["marl"] == where["millpond"]
    assert {where["lant"], where["rotunda"]} == {"o4", "o5"}
    assert not any(each.stated for each in made.feeds)


def test_back_bedroom_without_neighbours_has_no_way() -> None:
    """marl and millpond apart in the chain: none may share, and six do not go into five."""
    made = assigned(rig(BEDROOM, (MILL5,), chain="plumb hedge marl lant rotunda millpond", others=("mill5",)))
    (unfed,) = made.unfed
    assert unfed.why == "rivals"
    assert len(unfed.units) == 6 and len(unfed.outlets) == 5


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_only_feasible_permutation(order: tuple[int, ...]) -> None:
    """The assignment example of the SciPy documentation (`scipy.optimize.linear_sum_assignment`): costs
    [[4, 1, 3], [2, 0, 5], [3, 2, 2]] are least, 1 + 2 + 2 = 5, with columns 1, 0, 2.

    The core has no costs, so the example is put as a rig: a unit may stand on an outlet where its cost is at most 2. That
    leaves row 0 column 1, row 1 columns 0 and 1, row 2 columns 1 and 2: the optimum is the only way. As voltages:
    columns 9, 12, 15 V; rows accept 12..12, 9..12 and 12..15 V. The order of declaration does not matter.
    """
    costs = [[4, 1, 3], [2, 0, 5], [3, 2, 2]]
    volts = (9, 12, 15)
    allowed = [[volts[column] for column in range(3) if costs[row][column] <= 2] for row in range(3)]
    units = tuple(unit(f"row{row}", 10, volts=12, accepts=(allowed[row][0], allowed[row][-1])) for row in order)
    three = supply("s", *(outlets("c", column, column, (volts[column], 100)) for column in range(3)))
    where = places(assigned(rig(units, (three,), others=("s",))))
    assert where == {"row0": "c1", "row1": "c0", "row2": "c2"}
    assert sum(costs[row][int(where[f"row{row}"][1:])] for row in range(3)) == 5


def test_no_warning_is_preferred() -> None:
    """81 mA go to the 200 mA outlet (40.5 %), not to the smaller one (81 %) that would do within its rating."""
    two = supply("s", outlets("o", 1, 1, (9, 100)), outlets("o", 2, 2, (9, 200)))
    assert places(assigned(rig((unit("a", 81),), (two,), others=("s",)))) == {"a": "o2"}


def test_a_warning_is_better_than_none() -> None:
    """Two units of 81 mA: one of them must take the smaller outlet, at 81 %."""
    two = supply("s", outlets("o", 1, 1, (9, 100)), outlets("o", 2, 2, (9, 200)))
    made = assigned(rig((unit("a", 81), unit("b", 81)), (two,), others=("s",)))
    assert not made.unfed
    assert set(places(made).values()) == {"o1", "o2"}


def test_polarity_connector_and_kind_are_kept_apart() -> None:
    """Each unit has one outlet that is right for it; a reversing lead only where it is stated."""
    wide = Connector("barrel", 5.5, 2.5)
    four = supply(
        "s",
        outlets("ac", 1, 1, (9, 100), current="ac"),
        outlets("pos", 1, 1, (9, 100), polarity="centre-positive"),
        outlets("wide", 1, 1, (9, 100), connector=wide),
        outlets("neg", 1, 1, (9, 100)),
    )
    units = (
        unit("usual", 10),
        unit("fat", 10, connector=wide),
        unit("odd", 10, polarity="centre-positive"),
        unit("winding", 10, current="ac", polarity=None),
    )
    made = assigned(rig(units, (four,), others=("s",)))
    assert places(made) == {"usual": "neg1", "fat": "wide1", "odd": "pos1", "winding": "ac1"}


def test_the_setting_is_chosen_to_suit() -> None:
    """9/12/18 V: the 12 V unit stands at 12 V, where the outlet gives 375 mA: 300/375 = 80 %."""
    one = supply("s", outlets("b", 1, 1, (9, 500), (12, 375), (18, 250)))
    made = assigned(rig((unit("heron", 300, volts=12, starts=340),), (one,), others=("s",)))
    (load,) = made.loads.values()
    assert [load.volts, load.rating_ma, load.percent] == [12, 375, 80]


def test_ceiling_binds_the_choice() -> None:
    """Each supply bears 1 W: 9 V x 60 mA = 0.54 W, so two units can't both stand on the first."""
    first = supply("s", outlets("o", 1, 2, (9, 100)), watts=1)
    second = supply("t", outlets("o", 1, 2, (9, 100)), watts=1)
    made = assigned(rig((unit("a", 60), unit("b", 60)), (first, second), others=("s", "t")))
    assert not made.unfed
    assert {port.thing for each in made.feeds for port in each.outlets} == {"s", "t"}


def test_unknown_current_is_placed_on_the_strongest_and_counted_nowhere() -> None:
    """Its load is unknown, not 0."""
    two = supply("s", outlets("o", 1, 1, (9, 100)), outlets("o", 2, 2, (9, 200)))
    made = assigned(rig((unit("a", None),), (two,), others=("s",)))
    assert places(made) == {"a": "o2"}
    load = made.loads[made.feeds[0].outlets[0]]
    assert load.load_ma is None and load.percent is None and load.unknown == ("a",)


def test_upside_down_window_and_zero_rating_do_not_crash() -> None:
    """The resolver reports both; here they must only not break anything."""
    one = supply("s", outlets("o", 1, 1, (9, 0)))
    made = assigned(rig((unit("a", 5, accepts=(9.9, 8.7)),), (one,), feed("a", "s.o1")))
    assert made.loads[made.feeds[0].outlets[0]].percent is None


def test_supply_without_outlets() -> None:
    """There is nothing to choose from, and that is told."""
    made = assigned(rig((unit("a", 5),), (supply("s"),), others=("s",)))
    assert [each.why for each in made.unfed] == ["no outlets"]


def test_reserved_outlet_stays_out_of_the_feeds() -> None:
    """The 200 mA outlet is kept for a unit to come of 150 mA; the 8 mA unit takes the other."""
    two = supply("s", outlets("o", 1, 1, (9, 200)), outlets("o", 2, 2, (9, 100)))
    made = assigned(rig((unit("a", 8),), (two,), others=("s",), reserved=((fact(9), "dc", fact(150), "pitch"),)))
    assert places(made) == {"a": "o2"}
    assert {port.jack: text for port, text in made.reserved.items()} == {"o1": "pitch"}


@pytest.mark.parametrize("name", ["back-bedroom", "long-haul"])
def test_examples_left_free_find_a_way(name: str) -> None:
    """With every stated feed struck out the two worked rigs can be fed, and no outlet gets more than 80 %."""
    made = results(ROOT / "examples" / name / "board.rig").rig
    free = made.replace(power=made.power.replace(feeds=(), others=tuple(made.supplies)))
    power = assigned(free)
    assert not power.unfed
    assert all(load.percent is not None and load.percent <= 80 for load in power.loads.values())


_TWO_DECKS = """
unit plumb {
  body 70 x 120 x 55 mm
  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 30 mm
  needs 9 V dc
  polarity centre-negative
  draws 20 mA
}
unit lant like plumb {
}
supply near-mill {
  body 120 x 60 x 40 mm
  connector barrel 5.5 x 2.1 mm
  polarity centre-negative
  outlet o1..o2 9 V dc 200 mA isolated rear 30..90 mm
}
supply far-mill like near-mill {
}
power {
  others from far-mill, near-mill
}
deck near {
  size 600 x 400 mm
}
deck far {
  size 600 x 400 mm
}
"""


def test_outlets_of_its_own_deck_come_first() -> None:
    """Each supply has two outlets, far-mill is named first; a lead to the other deck counts 10 m, one on the same deck
    |335 - 50| + |330 - 120| = 495 mm at most."""
    places_on = "place on near {{\n  plumb at 15, 0 mm\n  lant at 300, 0 mm\n  {}}}\nplace on far {{\n  {}}}\n"
    near, far = "near-mill under at 20, 300 mm\n", "far-mill under at 20, 300 mm\n"
    there = written(_TWO_DECKS + places_on.format(near, far)).get(PowerAssignment)
    assert {str(port) for feed in there.feeds for port in feed.outlets} == {"near-mill.o1", "near-mill.o2"}


def test_outlets_on_the_board_come_before_those_beside_it() -> None:
    beside = (
        "place {\n  plumb at 15, 0 mm\n  lant at 300, 0 mm\n  near-mill under at 20, 300 mm\n  far-mill off board\n}\n"
    )
    one_deck = _TWO_DECKS.replace("deck far {\n  size 600 x 400 mm\n}\n", "")
    there = written(one_deck + beside).get(PowerAssignment)
    assert {str(port) for feed in there.feeds for port in feed.outlets} == {"near-mill.o1", "near-mill.o2"}
