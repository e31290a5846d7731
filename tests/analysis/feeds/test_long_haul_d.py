"""The touring rig (invented) from revision C to D: a pitch unit of 320 mA, for which no single outlet is left. Worked by hand."""

from __future__ import annotations

import pytest
from cases import ROOT, results

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.power.checks.nearly_full_outlet import nearly_full_outlet
from rigc.analysis.power.checks.unpowered_unit import unpowered_unit
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.power.squeezes import Squeezes
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.jacks import Port
from rigc.reports.power.choice_words import choice_words

RIG = ROOT / "examples" / "long-haul-d" / "board.rig"
BIG_FIVE = ("signalbox", "stepladder-ii", "weathervane", "lantxl", "rotundaxl")


def stated() -> Results:
    return results(RIG)


def left_free() -> Results:
    """Every stated outlet struck out, and the leads that would hold on to them."""
    made = results(RIG).rig
    power = made.power.replace(feeds=(), others=("mill8", "weir8"))
    return Results(made.replace(power=power, lead_wishes=made.lead_wishes.replace(leads=(), adaptors=())))


def full(of: Results) -> tuple[Diagnostic, ...]:
    return tuple(
        nearly_full_outlet(
            of.rig, of.get(PowerAssignment), of.get(Squeezes), of.get(JointLoads), of.get(LoadLimits), of.get(Placement)
        )
    )


def test_as_stated_the_pair_bears_it() -> None:
    """250 + 250 = 500, of which nine tenths: 450 mA; 320 / 450 = 71.1 %, over the 65 % for an unknown start-up (nearly-full-outlet)."""
    made = stated()
    (pair,) = [load for load in made.get(JointLoads).all if load.how == "parallel"]
    assert (pair.units, pair.limit_ma, pair.known_ma) == (("stepladder-ii",), 450, 320)
    assert {port.jack for port in pair.outlets} == {"a7", "a8"}
    (told,) = full(made)
    assert "320 of the 450 mA" in told.message and "71.1 %, more than 65 %" in told.message
    echomill = made.get(PowerAssignment).of("echomill")
    assert echomill is not None and echomill.outlets == (Port("weir8", "b8"),)
    assert made.get(PowerAssignment).loads[Port("weir8", "b8")].percent == pytest.approx(64)


def test_as_stated_totals() -> None:
    """A: 433 − 160 − 190 + 320 = 403 mA, x 9 V = 3.627 W. B: 1240 + 160 = 1400 mA x 9 V = 12.6, + 3.6 + 0.45 = 16.65 W of
    22.5: 74.0 %."""
    totals = {each.supply: each for each in stated().get(SupplyTotals).all}
    assert totals["mill8"].drawn_ma == pytest.approx(403)
    assert totals["mill8"].drawn_w == pytest.approx(3.627)
    assert totals["weir8"].drawn_w == pytest.approx(16.65)
    assert totals["weir8"].drawn_w / 22.5 == pytest.approx(0.74)


def test_left_free_five_want_four() -> None:
    """350, 250, 300, 300 and 320 mA want 500 mA (250 / 0.65 = 385 > 250, like all others); b1 to b4 give it, for b5 and b6 are
    needed at 12 V and 18 V. One finding, nearly-full-outlet, and no unpowered-unit: on the bare ratings there is a way."""
    made = left_free()
    (told,) = full(made)
    assert told.message.startswith("five units want four outlets: ")
    assert told.subject[:7] == ("heron", "signalbox", "lapwing", *BIG_FIVE[1:])
    for part in (
        "only weir8.b1, weir8.b2, weir8.b3 and weir8.b4 would do",
        "the others at 9 V give at most 250 mA",
        "weir8.b5 and weir8.b6 are needed by 'heron' and 'lapwing' at 12 V and 18 V",
        "'weathervane' stands on mill8.a",
        "at 100 %",
    ):
        assert part in told.message
    (squeeze,) = made.get(Squeezes).all
    assert (squeeze.rivals, squeeze.weaker_ma, squeeze.at_volts) == (BIG_FIVE, 250, 9)
    assert not list(unpowered_unit(made.rig, made.get(PowerAssignment), made.get(Placement)))


def test_left_free_the_pair_is_proposed() -> None:
    """weathervane on a7 + a8: 250 / 450 = 55.6 %, no nearly-full-outlet: the cheapest way out without a new supply; and it is so."""
    made = left_free()
    (told,) = full(made)
    assert told.advice.startswith("feed 'weathervane' from mill8.a7 and mill8.a8 in parallel")
    assert "(250 of 450 mA, 55.6 %)" in told.advice
    feeds = tuple(
        feed.replace(units=("weathervane",)) for feed in results(RIG).rig.power.feeds if feed.how == "parallel"
    )
    changed = Results(made.rig.replace(power=made.rig.power.replace(feeds=feeds)))
    assert not full(changed)
    assert changed.get(PowerAssignment).objective.warnings == 2  # the switches of heron and lapwing, as below


def test_left_free_is_proved_best_with_three_warnings() -> None:
    """Fewest warnings: three. heron and lapwing need switches away from their factory setting, at 12 V and 18 V; stepladder-ii takes one of b1 to b4 (320 / 500 = 64 %), weathervane an outlet of 250 mA."""
    power = left_free().get(PowerAssignment)
    assert power.proved and power.objective == power.bound
    assert (power.objective.warnings, power.objective.sharing) == (3, 0)
    pitch, vane = power.of("stepladder-ii"), power.of("weathervane")
    assert pitch is not None and pitch.outlets[0].jack in ("b1", "b2", "b3", "b4")
    assert vane is not None and power.loads[vane.outlets[0]].percent == 100


def test_the_table_says_that_it_is_proved() -> None:
    """And never that where it is not."""
    power = left_free().get(PowerAssignment)
    told = choice_words(power)
    assert told is not None and "Proved best" in " ".join(told.lines) and "3 rule warnings," in " ".join(told.lines)
    unsure = choice_words(power.replace(proved=False, bound=power.bound.replace(warnings=0), steps=77))
    assert unsure is not None
    words = " ".join(unsure.lines)
    assert "Not proved: the search ended after 77 steps" in words and "at least 0 rule warnings" in words
    assert "best" not in words and "optimal" not in words
    assert choice_words(stated().get(PowerAssignment)) is None
