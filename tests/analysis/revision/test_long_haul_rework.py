"""The touring rig's step from C to D: its pitch unit is exchanged for a larger one. Every figure is worked by hand.

Windows: a lead is kept from its route R + V and the least slack (30.0 mm audio, 40.0 mm DC) to 1.10 × (R + V) +
150.0 mm.
"""

from __future__ import annotations

import pytest
from two_boards import LONG_HAUL, LONG_HAUL_D, results_after

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.results import Results
from rigc.analysis.revision.plan.leads.plan import KEEP, NEW, REMAKE
from rigc.analysis.revision.rework import Rework
from rigc.model.jacks import Port


@pytest.fixture(scope="module")
def results() -> Results:
    return results_after(LONG_HAUL, LONG_HAUL_D)


@pytest.fixture(scope="module")
def rework(results: Results) -> Rework:
    return results.get(Rework)


@pytest.mark.parametrize(
    ("mark", "built", "least", "most"),
    [
        # 259 + 15 + 314 + 4 = 592; V 62 + 52 = 114; sum 706: 736 … 1.1 × 706 + 150 = 926.6
        ("A14", 8300, 7360, 9266),
        # 171 + 4 + 314 + 15 = 504; + 114 = 618: 648 … 679.8 + 150 = 829.8
        ("A15", 7100, 6480, 8298),
        # 268 + 271 + 7 = 546; + 62 = 608: 648 … 668.8 + 150 = 818.8; it is bought as 900 before and after
        ("D07", 9000, 6480, 9000),
        # 241 + 271 + 7 = 519; + 62 = 581: 621 … 639.1 + 150 = 789.1; 621 takes 900 from the list
        ("D08", 9000, 6210, 9000),
    ],
)
def test_four_leads_are_kept_in_their_windows(rework: Rework, mark: str, built: int, least: int, most: int) -> None:
    plan = rework.lead(mark)
    assert plan is not None and plan.before is not None and plan.after is not None
    assert (plan.verdict, plan.before.mark, plan.before.length, plan.after.length) == (KEEP, mark, built, built)
    assert (plan.least, plan.most) == (least, most)
    assert plan.labelled == (0, 1)


def test_one_lead_is_new_and_one_adaptor(rework: Rework) -> None:
    """D16: 55 + 141 + 7 = 203, + 76 = 279, + 40 = 319, so 450 is bought; D07 at 900 is over 1.1 × 279 + 150 = 456.9."""
    made = [plan for plan in rework.leads if plan.verdict != KEEP]
    assert [(plan.mark, plan.verdict, plan.least, plan.most) for plan in made] == [("D16", NEW, 3190, 4569)]
    assert made[0].after is not None and made[0].after.length == 4500
    assert [(each.mark, each.before) for each in rework.adaptors] == [("Y1", None)]


def test_a_naive_comparison_would_order_four(results: Results, rework: Rework) -> None:
    """The design's own lengths are 780, 680, 670 and 640: other numbers on three of four leads, and none of them is
    made.

    A14 706 + 70.6 = 776.6; A15 618 + 61.8 = 679.8; D07 608 + 60.8 = 668.8; D08 581 + 58.1 = 639.1, each to the
    next 10.
    """
    lengths = results.get(CableLengths).lengths
    assert [lengths[mark].finished for mark in ("A14", "A15", "D07", "D08")] == [7800, 6800, 6700, 6400]
    assert not any(plan.mark in ("A14", "A15", "D07", "D08") and plan.before is None for plan in rework.leads)
    assert not [step for step in rework.steps if step.action == "make"]


def test_what_hands_do_to_them(rework: Rework) -> None:
    """The audio leads go another way to the same jacks of the successor. D07's end moves to the adaptor, D08 is put
    on it; its way shifts by 5 mm (505 to 510), which its slack takes."""
    did = {
        plan.mark: (plan.dressed, plan.moved, plan.swapped, plan.adaptor)
        for plan in rework.leads
        if plan.touched and plan.verdict == KEEP
    }
    assert did == {
        "A14": (True, (), (1,), ()),
        "A15": (True, (), (0,), ()),
        "D07": (False, (1,), (), ()),
        "D08": (False, (), (1,), (1,)),
    }
    assert [rework.lead(mark).after.via[1] for mark in ("D07", "D08")] == ["Y1", "Y1"]  # type: ignore[union-attr]


def test_outlets(rework: Rework) -> None:
    """A7 and A8 share 320 mA as their ratings, 160 each of 500 × 0.9 / 2 = 225: 71.1 %. B8: 160 of 250 = 64 %."""
    found = {str(plan.outlet): (plan.before.units, plan.after.units, plan.after.load_ma) for plan in rework.outlets}
    assert found == {
        "mill8.a7": (("echomill",), ("stepladder-ii",), 160.0),
        "mill8.a8": (("stepladder",), ("stepladder-ii",), 160.0),
        "weir8.b8": ((), ("echomill",), 160.0),
    }
    assert [round(plan.after.percent or 0, 1) for plan in rework.outlets] == [71.1, 71.1, 64.0]


def test_supplies_in_all(rework: Rework) -> None:
    """A: 433 − 160 − 190 + 320 = 403 mA × 9 V = 3.627 W. B at 9 V: 1240 + 160 = 1400 mA, 12.60 W; with HERON's 300 mA
    at 12 V (3.60 W) and LAPWING's 25 mA at 18 V (0.45 W) 16.65 W of 22.5 = 74.0 %, and 1725 mA in all."""
    found = {plan.supply: plan.after for plan in rework.supplies}
    mill, weir = found["mill8"], found["weir8"]
    assert mill is not None and mill.drawn_ma == 403.0 and mill.drawn_w == pytest.approx(3.627)
    assert weir is not None and weir.drawn_ma == 1725.0 and weir.drawn_w == pytest.approx(16.65)
    assert weir.ceiling is not None and 100 * weir.drawn_w / weir.ceiling == pytest.approx(74.0)


def test_strips_and_mass(rework: Rework) -> None:
    """2 × 105 for the unit and 2 × 105 for the plate: 420 mm. Mass: 0.610 − 0.450 = +0.160; D16 0.45 m × 20 g + 2 × 6
    g = 21 g: 21.820 + 0.181 = 22.001 kg. What Y1 weighs is not stated."""
    laid = {plan.unit: plan for plan in rework.strips}
    after, before = laid["stepladder-ii"].after, laid["stepladder"].before
    assert after is not None and before is not None
    assert after.pieces == after.deck_pieces == before.pieces == before.deck_pieces == (105.0, 105.0)
    assert sum(after.pieces) + sum(after.deck_pieces) == 420.0
    assert [round(each or 0, 5) for each in rework.mass_kg] == [21.82048, 22.00148]


def test_what_is_tested_again(rework: Rework) -> None:
    """Outlets A7, A8, B8 off load, on load and ripple; Y1's polarity; loops 7 and 8, and the new unit bypassed; FAN4, which shares B8's
    common; the soak."""
    found = {(each.test, point) for each in rework.retests for point in each.points}
    outlets = {"mill8.a7", "mill8.a8", "weir8.b8"}
    assert {point for test, point in found if test == 5} == outlets | {"Y1"}
    assert {point for test, point in found if test == 7} == outlets
    assert {point for test, point in found if test == 6} == {"stepladder-ii", "echomill", "fan4"}
    assert {point for test, point in found if test == 11} == {"stepladder-ii", "echomill"}
    assert {point for test, point in found if test == 12} == {"rear-panel.l", "rear-panel.r"}
    assert {point for test, point in found if test == 9} == {"stepladder-ii"}
    # 17: the new unit's start-up current is not known
    assert {test for test, _ in found} == {5, 6, 7, 9, 11, 12, 17, 19}


def test_what_need_not_be_tested(rework: Rework) -> None:
    told = "\n".join(rework.spared)
    assert "mains earth" in told and "MIDI programs" in told and "treadles" in told


def test_units(rework: Rework) -> None:
    pair = {plan.name: (plan.replaces, plan.replaced_by) for plan in rework.units}
    assert pair == {"stepladder-ii": ("stepladder", None), "stepladder": (None, "stepladder-ii")}
    assert rework.successors.port(Port("stepladder", "in")) == Port("stepladder-ii", "in")


def test_measured_lengths_count() -> None:
    """As built A14 is 735.9 mm, a tenth below the window: it is made anew. A15 at 829.8 is just inside."""
    built = "\nas-built C {\n  A14 735.9 mm\n  A15 829.8 mm\n}\n"
    rework = results_after(LONG_HAUL + built, LONG_HAUL_D).get(Rework)
    verdicts = {plan.mark: (plan.verdict, plan.why) for plan in rework.leads if plan.after is not None}
    assert verdicts["A14"] == ("re-make", "too short") and verdicts["A15"] == (KEEP, "")


def test_the_new_design_may_tell_what_was_measured() -> None:
    built = "\nas-built C {\n  A15 829.9 mm\n}\n"
    rework = results_after(LONG_HAUL, LONG_HAUL_D + built).get(Rework)
    plan = rework.lead("A15")
    # 829.9 is over the 829.8 above; without the 14.0 mm that a barrel-angle takes in it is 815.9, which is inside
    assert plan is not None and (plan.verdict, plan.plugged, plan.cut) == (KEEP, (0,), 0)
    assert plan.after is not None and plan.after.length == 8159


def test_a_pulled_lead_serves_under_a_fresh_number() -> None:
    """The delay's lead gets a number although the old one, pulled here, would do: it is used, and bears another
    number."""
    old = LONG_HAUL.replace("  A27 canaltwo", "  A99 canaltwo")
    rework = results_after(old, LONG_HAUL.replace("  revision C", "  revision D")).get(Rework)
    plan = rework.lead("A27")
    assert plan is not None and plan.renumbered and plan.before is not None and plan.before.mark == "A99"


def test_every_step_belongs_to_a_change() -> None:
    changes = '  change 1 design "pitch" touches stepladder-ii\n  change 2 design "delay" touches echomill\n'
    done = "\nas-built C {\n  done 2\n}\n"
    rework = results_after(LONG_HAUL, LONG_HAUL_D + done, changes).get(Rework)
    found = {plan.mark: (plan.change, plan.done) for plan in rework.leads if plan.touched}
    assert found == {"A14": (1, False), "A15": (1, False), "D07": (1, False), "D08": (1, False), "D16": (2, True)}
    common = {step.action for step in rework.steps if step.change is None}
    assert common == {"power off", "measure", "test", "bag"}


def test_nothing_changes() -> None:
    rework = results_after(LONG_HAUL, LONG_HAUL.replace("  revision C", "  revision D")).get(Rework)
    assert not rework.steps and not any(plan.touched for plan in rework.leads)
    assert not (rework.outlets or rework.units or rework.strips or rework.labels or rework.programs or rework.retests)


def test_a_spare_that_is_carried_no_longer_is_put_in() -> None:
    """A10 is measured too short; of the two spares of 500 mm one is carried on, the other serves as it is."""
    spare = "  2 audio lead 1300 mm"
    old = LONG_HAUL.replace(spare, f"  2 audio lead 500 mm\n{spare}") + "\nas-built C {\n  A10 200 mm\n}\n"
    new = LONG_HAUL.replace("  revision C", "  revision D").replace(spare, f"  1 audio lead 500 mm\n{spare}")
    rework = results_after(old, new).get(Rework)
    plan = rework.lead("A10")
    assert plan is not None and plan.before is not None
    # A10: 450 mm of route and drops, kept from 480 to 645
    assert (plan.verdict, plan.spare, plan.before.length, plan.least, plan.most) == (KEEP, True, 5000, 4800, 6450)
    assert [(each.what, each.before, each.after) for each in rework.spares] == [("audio lead 500 mm", 2, 1)]
    kept = results_after(old, new.replace("  1 audio lead 500 mm", "  2 audio lead 500 mm")).get(Rework)
    again = kept.lead("A10")
    assert again is not None and again.verdict == REMAKE


def test_a_lead_without_a_way_stays_as_long_as_nothing_changes() -> None:
    """A30 runs over the stage: whether 6 m reach the other amp is what the design says, not the deck."""
    amp = 'amp left-amp "left amp"'
    assert amp in LONG_HAUL
    new = LONG_HAUL.replace("  revision C", "  revision D")
    crossed = new.replace("rear-panel.l -> left-amp", "rear-panel.l -> X").replace(
        "rear-panel.r -> right-amp", "rear-panel.r -> left-amp"
    )
    crossed = crossed.replace("rear-panel.l -> X", "rear-panel.l -> right-amp")
    rework = results_after(LONG_HAUL, crossed).get(Rework)
    told = {plan.mark: (plan.verdict, plan.moved) for plan in rework.leads if plan.touched}
    assert told == {"A30": (KEEP, (1,)), "A31": (KEEP, (1,))}
