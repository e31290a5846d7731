"""Mass and balance: the worked rigs with their arithmetic, and what is missing."""

from __future__ import annotations

import pytest
from written import changed, written

from rigc.analysis.weight.case_loads import CaseLoads
from rigc.analysis.weight.mass import Mass

TWO_CASES = "tests/rigs/two-cases.rig"
HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
BOARD = """
unit marl {
  body 70 x 120 x 55 mm
  mass 400 g
}
supply mill {
  body 190 x 60 x 45 mm
  mass 1.1 kg
}
deck board {
  size 400 x 300 mm
  mass 2 kg
}
place {
  marl at 0, 0 mm turned 90 deg
  mill under at 100, 200 mm
}
mounting {
  marl bolted
}
"""


def test_the_home_board() -> None:
    mass = changed(HOME).get(Mass)
    kg = {item.name: item.kg for item in mass.items}
    units = ("plumb", "hedge", "marl", "millpond", "lant", "rotunda")
    assert sum(kg[unit] or 0 for unit in units) == pytest.approx(2.190)  # .19+.35+.40+.40+.42+.43
    assert kg["audio leads"] == pytest.approx(0.192)  # 1.200 m × 35 g + 10 plugs × 15 g
    assert kg["dc leads"] == pytest.approx(0.111)  # bought: 2.250 m × 20 g + 11 plugs × 6 g: the Y lead has 3
    strips = (kg["hook"] or 0) + (kg["mushroom"] or 0) + (kg["rail-tape"] or 0)
    assert strips == pytest.approx(0.10812)  # (0.990 + 0.154) m × 30 g + 1.640 m × 45 g
    # 2.190 + deck 2.100 + supply 1.100 + 0.192 + 0.111 + 0.10812
    assert round(mass.total_kg or 0, 3) == 5.801
    assert mass.with_case_kg == mass.total_kg  # no case is declared


def test_the_home_board_without_strip_on_the_rails() -> None:
    """With the mini unit on hook-and-loop the two deck pieces fall away: 0.080 m × 30 g = 2.4 g less."""
    mass = changed(HOME, ("  plumb with mushroom", "  plumb with hook")).get(Mass)
    assert round(mass.total_kg or 0, 3) == 5.799


def test_balance_of_the_home_board() -> None:
    (balance,) = changed(HOME).get(Mass).balances
    # moments in kg·mm, middle of each body: x: plumb .19·288 + hedge .35·187.5 + marl .40·75 + millpond .40·325
    # + lant .42·200 + rotunda .43·75 = 396.595; supply 1.10·215 = 236.5; deck 2.10·210 = 441; 1074.095 / 5.390 = 199.28
    # y: .19·57 + .35·67.5 + .40·70 + (.40 + .42 + .43)·222 = 339.955; 1.10·255 = 280.5; 2.10·160 = 336; 956.455 / 5.390 = 177.45
    assert balance.kg == pytest.approx(5.390)
    assert balance.x_mm == pytest.approx(1074.095 / 5.390)
    assert balance.y_mm == pytest.approx(956.455 / 5.390)
    assert (round(balance.x_mm or 0, 1), round(balance.y_mm or 0, 1)) == (199.3, 177.4)


def test_the_touring_board() -> None:
    mass = changed(TOURING).get(Mass)
    kg = {item.name: item.kg for item in mass.items}
    # leads: A01–A28 and C01 18.18 m × 35 g + 56 plugs × 15 g: A27 and A28 end soldered at the panel
    assert (kg["audio leads"] or 0) + (kg["control leads"] or 0) == pytest.approx(1.4763)
    assert kg["midi leads"] == pytest.approx(0.1315)  # bought: 2.70 m × 25 g + 8 plugs × 8 g
    assert kg["dc leads"] == pytest.approx(0.366)  # bought: 9.30 m × 20 g + 30 plugs × 6 g
    assert kg["mushroom"] == pytest.approx(0.28668)  # 9.556 m × 30 g
    # units and supplies 13.910 + deck 5.200 + 1.4763 + 0.1315 + 0.366 + 0.28668 + panel with inlet 0.450
    assert round(mass.total_kg or 0, 3) == 21.82
    assert round(mass.with_case_kg or 0, 3) == 33.32  # the case: 11.5


def test_things_turn_and_hang() -> None:
    (balance,) = written(BOARD).get(Mass).balances
    # marl turned lies on 120 × 70: middle 60, 35; mill's middle 195, 230; deck 200, 150; 3.5 kg in all
    assert balance.kg == pytest.approx(3.5)
    assert balance.x_mm == pytest.approx((0.4 * 60 + 1.1 * 195 + 2 * 200) / 3.5)
    assert balance.y_mm == pytest.approx((0.4 * 35 + 1.1 * 230 + 2 * 150) / 3.5)


def test_a_thing_on_a_tier_balances_higher() -> None:
    deck = "  size 400 x 300 mm\n"
    raised = BOARD.replace(deck, deck + "  thickness 12 mm\n  tier back 0..150 mm raised 50 mm\n")
    (balance,) = written(raised.replace("turned 90 deg", "turned 90 deg on back")).get(Mass).balances
    # marl 50 + 55/2 = 77.5 above the top, mill hangs at -12 - 45/2 = -34.5, the deck itself at -6
    assert balance.z == pytest.approx((0.4 * 77.5 - 1.1 * 34.5 - 2 * 6) / 3.5)


@pytest.mark.parametrize(
    ("old", "missing"),
    [("  mass 400 g\n", "the mass of 'marl'"), ("  mass 2 kg\n", "the mass of 'board'")],
)
def test_an_unknown_mass_is_not_nought(old: str, missing: str) -> None:
    mass = written(BOARD.replace(old, "")).get(Mass)
    assert mass.total_kg is None
    assert mass.missing == (missing,)
    assert mass.balances[0].kg is None
    assert mass.known_kg > 1


def test_a_unit_without_a_place_weighs_but_does_not_balance() -> None:
    feed = "unit hum {\n  mass 200 g\n  inlet dc barrel 5.5 x 2.1 mm\n}\nchain marl -> hum\n"
    mass = written(BOARD + feed).get(Mass)
    assert "hum" in [item.name for item in mass.items]
    assert mass.balances[0].missing == ("the place of 'hum'",)


def test_what_stands_off_the_board_is_no_weight_of_it() -> None:
    """The deck 2.1 kg, the unit on it 0.4 kg, the supply in its socket 0.3 kg; what is known, strips apart."""
    text = """
unit plumb {
  mass 400 g
}
supply wart {
  mass 300 g
}
deck board {
  size 400 x 300 mm
  mass 2.1 kg
}
place {
  plumb at 10, 10 mm
WHERE
}
"""
    beside, under = (
        written(text.replace("WHERE", where)).get(Mass) for where in ("  wart off board", "  wart under at 10, 200 mm")
    )
    assert round(float(beside.known_kg), 6) == 2.5
    assert round(float(under.known_kg), 6) == 2.8


def test_each_of_two_cases_weighs_with_what_is_in_it() -> None:
    """Trunk: 0.4 + 0.6 + deck 3.0; a lead of 0.14 m x 35 g with 2 plugs of 15 g; strips 2 x 95 + 2 x 100 = 390 mm and as much on
    the deck, 0.78 m x 30 g: 4.0583 kg; with the case of 9 kg 13.0583. Box: 0.5 + 2.5, strips 0.32 m x 30 g: at least 3.0096."""
    trunk, box, tray = changed(TWO_CASES).get(CaseLoads).all
    assert trunk.mass.total_kg == pytest.approx(4.0583)
    assert trunk.mass.with_case_kg == pytest.approx(13.0583)
    assert box.mass.total_kg is None
    assert box.mass.board_known == pytest.approx(3.0096)
    assert tray.mass.with_case_kg == pytest.approx(0.3 + 1.0 + 0.32 * 0.030)
    assert [each.limit.name for each in trunk.margins] == ["lift", "airline"]
    assert [float(each.left) for each in trunk.margins] == pytest.approx([23 - 13.0583, 32 - 13.0583])


def test_what_has_no_place_travels_in_the_first_case() -> None:
    """The same, with a unit that stands nowhere: it is in the trunk alone, and the box and the tray weigh what they weighed."""
    hum = "unit hum {\n  mass 200 g\n  input in ts\n  output out ts\n}\nchain guitar -> hum -> "
    trunk, box, tray = changed(TWO_CASES, ("chain guitar -> ", hum)).get(CaseLoads).all
    assert [load.name for load in (trunk, box, tray) if "hum" in [item.name for item in load.mass.items]] == [
        trunk.name
    ]
    assert box.mass.board_known == pytest.approx(3.0096)
    assert tray.mass.with_case_kg == pytest.approx(0.3 + 1.0 + 0.32 * 0.030)


def test_a_ready_lead_weighs_as_its_stock_says() -> None:
    """The home board buys D1 300, D2a 300, D2b 450, D3 300, D4 450 and D5 450 mm. D1 and D3 as 21 g each, D4 and D5 as 26 g
    each; the Y lead is of no list: 0.75 m x 20 g and 3 plugs x 6 g = 33 g. 21 + 21 + 26 + 26 + 33 = 127 g."""
    made = changed(HOME, ("leads {\n", "premade dc 300, 450, 600 mm mass 21, 26, 31 g\n\nleads {\n"))
    assert {item.name: item.kg for item in made.get(Mass).items}["dc leads"] == pytest.approx(0.127)
