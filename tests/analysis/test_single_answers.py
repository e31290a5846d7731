"""What single functions of the analysis answer, worked by hand: edges that no rule's case stands on."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from cases import worked

from rigc.analysis.deck.spot_on_thing import skewed
from rigc.analysis.feeds.outlet_fit import assumed_polarity
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ring_words import in_scenarios
from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.parallel.comb_words import notes_taken
from rigc.analysis.stores.bought_leads import BoughtLeads
from rigc.analysis.stores.reel_uses import up_to_centimetre
from rigc.analysis.tests.nominal import nominal_at


def test_a_point_of_what_stands_straight_lies_where_it_is_measured() -> None:
    """Of 60 x 100 mm, the point at 10, 20 mm lies 20 left of and 30 before the middle at 30, 50 mm: 5 + 30 - 20, 7 + 50 - 30."""
    place: Any = SimpleNamespace(skew_deg=0, x_mm=5, y_mm=7)
    assert skewed(60, 100, 0).at((10, 20), place) == (15, 27)


def test_a_point_of_what_stands_askew_turns_about_the_middle() -> None:
    """By a quarter, the rectangle around is 100 x 60 mm, and what lay 20 left and 30 before the middle lies 30 right and 20 before it."""
    place: Any = SimpleNamespace(skew_deg=90, x_mm=0, y_mm=0)
    x, y = skewed(60, 100, 90).at((10, 20), place)
    assert (round(x, 6), round(y, 6)) == (50 + 30, 30 - 20)


@pytest.mark.parametrize(
    ("current", "assumed", "leans"), [("dc", True, True), ("dc", False, False), ("ac", True, False)]
)
def test_a_polarity_that_is_assumed_counts_for_dc_alone(current: str, assumed: bool, leans: bool) -> None:
    unit: Any = SimpleNamespace(inlet=None, current=current, polarity=SimpleNamespace(assumed=assumed))
    tap: Any = SimpleNamespace(current="dc")
    assert assumed_polarity(unit, tap) is leans


def test_scenarios_are_named_where_there_are_several() -> None:
    rig = worked("tests/reach/board.rig").rig
    assert in_scenarios(rig, ["bay"]) == ", in scenario 'bay'"
    assert in_scenarios(rig, ["club", "bay"]) == ", in every scenario"
    three: Any = SimpleNamespace(scenarios=dict.fromkeys("abc"))
    assert in_scenarios(three, ["a", "c"]) == ", in scenarios 'a' and 'c'"


def test_a_note_that_is_stated_is_not_taken() -> None:
    notes = [SimpleNamespace(instrument=name, stated=stated) for name, stated in (("lute", True), ("guitar", False))]
    paths: Any = SimpleNamespace(notes=notes)
    assert notes_taken(paths) == "'guitar' states no `lowest note`"


def test_a_whole_centimetre_stays() -> None:
    length: Any = 1.1
    assert up_to_centimetre(length) is length


def test_what_is_fed_has_the_voltage_of_its_outlet_at_its_inlet_alone() -> None:
    """'heron' is fed from mere.o5 at 12 V; its audio output bears none of it."""
    results = worked("tests/reach/board.rig")
    rig, power, leads = results.rig, results.get(PowerAssignment), results.get(Leads)
    found = {point: nominal_at(rig, power, leads, point) for point in ("heron", "heron.dc", "heron.out")}
    assert {point: each and each.volts for point, each in found.items()} == {
        "heron": 12,
        "heron.dc": 12,
        "heron.out": None,
    }


def test_what_is_bought_is_priced_by_its_list_and_what_is_cut_is_not() -> None:
    """DC leads are bought: two of 600 mm for 6 EUR and 30 g, two of 900 mm for 8 EUR and 40 g; a Y lead stands in no list. Audio is cut."""
    classes = worked("tests/reach/board.rig").get(BoughtLeads).classes
    dc = classes["dc"]
    assert {mark: price and float(price) for mark, price in dc.prices.items()} == {
        "D1": 6, "D2": 6, "D4a": None, "D4b": None, "D5": 8, "D6": 8,
    }  # fmt: skip
    assert dc.price == 6 + 6 + 8 + 8
    assert dc.mass == pytest.approx(0.03 + 0.03 + 0.04 + 0.04)
    assert classes["audio"].prices == {}
