"""Reasons: the formulas of both worked rigs by hand, what an assumed or missing fact does."""

from __future__ import annotations

import re
from functools import cache

import pytest
from cases import ROOT, results
from written import changed

from rigc.analysis.reasoning import Reasoning, UnknownValue
from rigc.traced.reason import NOT_KNOWN, Reason

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


@cache
def told(rig: str, *changes: tuple[str, str]) -> Reasoning:
    """The reasons of an example with some words changed."""
    return Reasoning(changed(rig, *changes))


def one(rig: str, name: str, *changes: tuple[str, str]) -> Reason:
    """The reason of one value."""
    (reason,) = told(rig, *changes).of(name)
    return reason


# Worked by hand, from the rigs' own tables. Long haul, A14 from signalbox.s7 to stepladder.in:
# signalbox stands at 20, 15, is 110 deep and 65 tall; s7 is its 13th jack, 18 mm apart from 50 on: 50 + 6 · 36 = 266 from the
# left, so the jack is at 286, 125 and 40 up; the barrel plug leads its cable out 10 mm behind it, at 286, 135.
# stepladder stands at 470, 325 and is 70 wide; in is on its right, 90 back: 540, 415 and 25 up; out to 550, 415.
# Under the deck: |286 − 550| = 264, |135 − 150| = 15, 464 − 150 = 314, 464 − 415 = 49; through it 10 + 40 + 12 and 10 + 25 + 12.
@pytest.mark.parametrize(
    ("rig", "name", "value", "formula"),
    [
        (TOURING, "signalbox.s7.point", "286, 125", "20 + 266, 15 + 110 = 286, 125"),
        (TOURING, "A14.exit.a", "286, 135", "286, 125 + 10 = 286, 135"),
        (TOURING, "A14.exit.b", "550, 415", "540 + 10, 415 = 550, 415"),
        (
            TOURING,
            "A14.route",
            "751",
            "|286 − 550| + |135 − 150| + |150 − 464| + |464 − 415| + 10 + 40 + 12 + 10 + 25 + 12 = 751",
        ),
        (TOURING, "A14.slack", "75.1", "the highest of 751 × 0.1, 30 = 75.1"),
        (TOURING, "A14.finished", "830", "751 + 75.1 = 826.1 → 830"),
        (TOURING, "A14.cut", "858", "830 + 14 + 14 = 858"),
        (TOURING, "A14.premade", "900", "781 → 900"),
        (TOURING, "D01.cut", "premade", "it comes ready: nothing is cut"),
        (TOURING, "weir8.b5.percent", "80", "300 / 375 × 100 = 80"),
        (
            TOURING,
            "weir8.watts",
            "15.210",
            "(350 × 9 + 250 × 9 + 300 × 9 + 300 × 9 + 300 × 12 + 25 × 18 + 40 × 9) / 1000 = 15.210",
        ),
        (TOURING, "weir8.spare", "1", "8 − 7 in use − 0 reserved = 1"),
        (TOURING, "lantxl.midi.length", "1200", "600 + 600 = 1200"),
        (TOURING, "preset-1.rotundaxl.sent", "0", "1 − 1 = 0"),
        (TOURING, "preset-1.wire", "1.92", "0.64 + 0.64 + 0.64 = 1.92"),
        # Back bedroom, D2a from mill5.o2 (180, 225, out to 180, 218) to marl.dc (75, 130, out to 75, 137, 33 up), deck 20 thick.
        (HOME, "D2a.route", "259", "|180 − 75| + |218 − 145| + |145 − 137| + 10 + 10 + 33 + 20 = 259"),
        (HOME, "D2a.slack", "40", "the highest of 259 × 0.1, 40 = 40"),
        (HOME, "D2a.finished", "300", "259 + 40 = 299 → 300"),
        (HOME, "D2a.premade", "300", "299 → 300"),
        (HOME, "A2.finished", "90", "46 + 30 = 76 → 90"),
        (HOME, "mill5.o2.load", "30", "8 + 22 = 30"),
        (HOME, "mill5.o2.percent", "30", "30 / 100 × 100 = 30"),
        (HOME, "mill5.share", "51.3", "3.078 / 6 × 100 = 51.3"),
        (HOME, "plumb.strips", "1 × 74", "1 = 1; 94 − 20 = 74 long"),
        (HOME, "plumb.engaged", "7.25", "(25 × 22.5 + 25 × 6.5) / 100 = 7.25"),
        (HOME, "plumb.needed", "3.11", "0.19 × 20 × 9.81 / 120 × 10 = 3.11"),
        (HOME, "hook.order", "1.1", "990 / 1000 × (1 + 0.1) = 1.089 → 1.1"),
        (HOME, "board.tape-1", "410 × 40", "420 − 10 = 410 long; 42.5 − 2.5 = 40 wide"),
        (HOME, "audio.cut", "1324", "114 + 114 + 744 + 176 + 176 = 1324"),
        (HOME, "audio.mass", "0.192", "(90 + 90 + 720 + 150 + 150) / 1000 × 35 / 1000 + 8 × 0.015 + 2 × 0.015 = 0.192"),
        (HOME, "dc.mass", "0.111", "(300 + 300 + 450 + 300 + 450 + 450) / 1000 × 20 / 1000 + 11 × 0.006 = 0.111"),
        (HOME, "mini-coax.with-waste", "1.40", "1.324 × (1 + 0.05) = 1.3902 → 1.40"),
        # plumb, 46 x 94 x 50, stands at 265, 10; mill5, 45 tall, hangs below a deck that is 420 wide and 20 thick
        (HOME, "plumb.x", "288", "265 + 46 / 2 = 288"),
        (HOME, "plumb.y", "57", "10 + 94 / 2 = 57"),
        (HOME, "plumb.z", "25", "0 + 50 / 2 = 25"),
        (HOME, "mill5.z", "−42.5", "0 − 20 − 45 / 2 = −42.5"),
        (HOME, "board.x", "210", "420 / 2 = 210"),
        (HOME, "board.balance.mass", "5.390", "0.190 + 0.350 + 0.400 + 0.400 + 0.420 + 0.430 + 1.100 + 2.100 = 5.390"),
        (
            # 4.75 + 8.4 + 11 + 11 + 12.18 + 12.47 − 46.75 − 21 = −7.95; −7.95 / 5.39 = −1.475
            HOME,
            "board.balance.z",
            "−1.5",
            "(0.190 × 25 + 0.350 × 24 + 0.400 × 27.5 + 0.400 × 27.5 + 0.420 × 29 + 0.430 × 29 + (1.100 × −42.5) + (2.100 × −10)) / 5.390 = −1.5",
        ),
        # the feet stand 20 mm inside the edges of a deck of 420 x 320 mm
        (
            HOME,
            "board.balance.inside",
            "122.6",
            "the least of 199.3 − 20, 420 − 20 − 199.3, 177.4 − 20, 320 − 20 − 177.4 = 122.6",
        ),
        (HOME, "rig.lift.left", "17.199", "23 − 5.801 = 17.199"),
        (TOURING, "rig.airline.left", "−1.320", "32 − 33.320 = −1.320"),
        (HOME, "A1.around", "6.5", "6.5 mm, as stated"),
        (HOME, "home.takes-a", "0.048", "10.99 / 230 = 0.048"),
        (HOME, "home.mill5.flux", "4.600", "230 / 1 / 50 = 4.600"),
        (HOME, "home.mill5.flux-percent", "100", "4.600 / (230 / 1 / 50) × 100 = 100"),
        (HOME, "A5.D4.distance", "17", "the least of 17, 17 = 17"),
        # A4: 25 + 155 + 22 = 202 through y 65 and 220, 55 + 0 + 97 = 152 through 145 alone
        (
            HOME,
            "A4.joint-saves",
            "50",
            "|90 − 65| + |65 − 220| + |220 − 242| − (|90 − 145| + |145 − 145| + |145 − 242|) = 50",
        ),
        # 8 flat angles on leads that are made here; cable: 1.324 m cut, with waste 1.40, and the spare ends of two times 14 mm
        (HOME, "pull.flat-angle.quantity", "8", "8, to fit of flat-angle"),
        (HOME, "pull.mini-coax.total", "1.43", "1.324 + 0.106 = 1.43"),
        # 990 mm are laid, 1.1 m are ordered
        (HOME, "pull.hook.spare", "0.11", "1.1 − 0.99 = 0.11"),
        # 6 m and twice 0.09 m at 105 pF/m are 630 + 9.45 + 9.45 pF; with the pickup's 120 pF and 4.2 H: 2801 Hz.
        (HOME, "guitar.section.cable", "648.9", "630 + 9.45 + 9.45 = 648.9"),
        (HOME, "guitar.section.resonance", "2801", "1 / (2π √(4.2 H × 768.9 pF)) = 2801 Hz"),
        (HOME, "A4.level.margin", "7", "11 − 4 = 7"),
    ],
)
def test_worked_by_hand(rig: str, name: str, value: str, formula: str) -> None:
    reason = one(rig, name)
    assert (reason.value, reason.formula) == (value, formula)


def test_the_mass_of_the_board() -> None:
    """Units 2.190, supply 1.100, deck 2.100, audio 0.192, DC 0.111, strips 0.154 · 30 + 0.990 · 30 + 1.640 · 45 g: 5.801 kg."""
    reason = one(HOME, "rig.mass")
    assert reason.value == "5.801"
    assert reason.formula.startswith("0.190 + 0.350 + 0.400 + 0.400 + 0.420 + 0.430 + 1.100 + 2.100 + 0.192 + 0.111 + ")
    assert one(TOURING, "rig.with-case").value == "33.320"


def test_a_fact_is_told_with_its_place_and_how_it_is_known() -> None:
    (draws,) = one(HOME, "plumb.draws").inputs
    assert draws.value == "30 mA"
    assert draws.span is not None and draws.span.text == "30 mA"
    assert draws.provenance is not None
    assert (draws.provenance.kind, draws.provenance.date, draws.provenance.by) == ("measured", "2026-02-14", "R.K.")


def test_a_number_of_our_own_is_told_with_its_source() -> None:
    slack = one(HOME, "A2.slack")
    assert [each.source for each in slack.inputs if not each.why] == ["common practice, no source"] * 2


def test_an_assumed_fact_shows_in_all_that_rests_on_it() -> None:
    reasoning = told(HOME, ("draws 22 mA", "draws 22 mA assumed"))
    for name, leans in (("mill5.o2.load", True), ("mill5.share", True), ("mill5.o3.load", False), ("A2.cut", False)):
        assert reasoning.leans(reasoning.by_name[name]) is leans
    (fact,) = reasoning.by_name["millpond.draws"].inputs
    assert fact.assumed
    assert not told(HOME).leans(told(HOME).by_name["mill5.o2.load"])


def test_a_missing_fact_is_named_and_no_number_stands_in_for_it() -> None:
    reasoning = told(HOME, ("  draws 22 mA\n", ""), ("  draws 8 mA\n", ""))
    load = reasoning.by_name["mill5.o2.load"]
    assert (load.value, load.formula) == (NOT_KNOWN, "for want of what current marl draws, what current millpond draws")
    assert reasoning.by_name["mill5.o2.percent"].value == NOT_KNOWN


def test_a_lead_without_a_way_says_why() -> None:
    route = one(HOME, "A4.route", ("  thickness 20 mm\n", ""))
    assert route.value == NOT_KNOWN
    assert route.formula == "for want of the thickness of deck 'board'"


def test_a_thing_gives_all_its_values_and_deep_goes_to_the_source() -> None:
    reasoning = told(TOURING)
    fields = [reason.name for reason in reasoning.of("A14")]
    assert {"A14.route", "A14.slack", "A14.finished", "A14.cut", "A14.premade", "A14.label.a"} <= set(fields)
    behind = {reason.name for reason in reasoning.deep(reasoning.of("A14.cut"))}
    assert {"A14.finished", "A14.route", "A14.exit.a", "signalbox.s7.point", "A14.drop.b"} <= behind
    assert "A15.route" not in behind


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("A14.finnished", "'A14' has no value 'finnished'; did you mean 'A14.finished'?"),
        ("A14.colour", "'A14' has no value 'colour'; it has "),
        ("a14", "nothing named 'a14' has a value; did you mean 'A14'?"),
        ("stepladdr", "nothing named 'stepladdr' has a value; did you mean 'stepladder'?"),
        ("weir8.b55.load", "'weir8' has no value 'b55.load'; did you mean 'weir8.b5.load'?"),
        ("", "nothing named '' has a value"),
        ("q", "nothing named 'q' has a value"),
    ],
)
def test_an_unknown_name_gets_the_nearest_one(typed: str, said: str) -> None:
    with pytest.raises(UnknownValue) as fault:
        told(TOURING).of(typed)
    assert str(fault.value).startswith(said)


@pytest.mark.parametrize("rig", [HOME, TOURING])
def test_the_formula_of_every_route_comes_to_the_route(rig: str) -> None:
    """Reckoned anew from the formula's own text."""
    routes = [each for name, each in told(rig).by_name.items() if name.endswith(".route") and each.value != NOT_KNOWN]
    for reason in routes:
        sums, _, total = reason.formula.rpartition(" = ")
        sums = re.sub(r"\|([\d.]+) − ([\d.]+)\|", r"abs(\1 - \2)", sums)
        assert eval(sums) == pytest.approx(float(total)), reason.formula
    assert len(routes) > 10


def test_a_balance_half_way_between_two_tenths_is_rounded_alike_everywhere() -> None:
    # (1 kg × 182.5 mm + 1 kg × 200 mm) / 2 kg = 191.25 mm, halves away from nought
    reasoning = Reasoning(results(ROOT / "tests/rigs/half-way-balance.rig"))
    assert reasoning.by_name["board.balance.x"].value == "191.3"
    assert reasoning.by_name["rig.balance"].value.startswith("191.3, ")
