"""No chosen place breaks a rule that rigc itself tells: whole rigs with all places taken out, and a small board for each rule."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from laying.deck_rules import of_places, told
from rigc.analysis.laying.chosen_places import with_chosen_places

QUICK = 6_000  # steps; the small boards have few things
RIGS = [
    *sorted((ROOT / "examples").glob("*/board.rig")),
    *(each for each in sorted((ROOT / "tests" / "rigs").glob("*.rig")) if each.stem != "two-cases"),
]
LONG = re.compile("long-haul|as-ordered")
"""Boards that take long, and those whose units are all but the same as an example's."""


@pytest.mark.slow
@pytest.mark.parametrize(
    "case",
    [pytest.param(each, marks=pytest.mark.long) if LONG.search(str(each)) else each for each in RIGS],
    ids=lambda each: each.parent.name if each.stem == "board" else each.stem,
)
def test_whole_rigs(case: Path) -> None:
    rig = results(case).rig
    laid, _ = with_chosen_places(rig.replace(places={}))
    assert of_places(laid, rig) == []


DECK = "size 400 x 300 mm", "thickness 12 mm", "drop 150 mm", "clearance 90 mm", "mass 3 kg", "feet 20 mm in"
BODY = "body 70 x 110 x 50 mm", "mass 400 g"


def pedal(name: str, *lines: str) -> str:
    return block("unit", name, *BODY, "input in ts right 80 mm up 25 mm", "output out ts left 80 mm up 25 mm", *lines)


def supply(kind: str, *lines: str) -> str:
    outlet = "outlet o1..o2 9 V dc 500 mA isolated front 20..60 mm up 20 mm"
    return block("supply", "brook", "body 180 x 60 x 40 mm", "mass 900 g", kind, outlet, *lines)


POWER = "power {\n  marl from brook.o1\n  hedge from brook.o2\n}\n"
NINE = "inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 25 mm", "needs 9 V dc", "draws 10 mA"
CHAIN = "chain marl -> hedge\n"
INCHES = "unit {} {{\n  body 2.615 x 4.6 x 2 in\n  input in ts right 3 in up 1 in\n  output out ts left 3 in up 1 in\n  worked by hand\n}}\n"
SMALL = {
    "a coil wants distance from a linear supply": (
        block("deck", "plank", *DECK)
        + pedal("marl", "treadle 45..60 mm", *NINE)
        + pedal("hedge", *NINE)
        + supply("linear")
        + POWER
        + CHAIN
    ),
    "no supply hangs under what gets warm": (
        block("deck", "plank", "size 260 x 240 mm", *DECK[1:])
        + pedal("marl", "warm 8 W", *NINE[:2], "draws 1 A")
        + pedal("hedge", *NINE)
        + supply("switch-mode")
        + POWER
        + CHAIN
    ),
    "air before vents": (
        block("deck", "plank", *DECK) + pedal("marl", "vents left") + pedal("hedge", "vents right") + CHAIN
    ),
    "a knob and the switch of another": (
        block("deck", "plank", *DECK)
        + pedal("marl", "switch at 8, 60 mm")
        + pedal("hedge", "knob at 62, 60 mm")
        + CHAIN
    ),
    "a switch beyond the feet of a light board": (
        block("deck", "plank", *DECK[:4], "mass 500 g", "feet 90 mm in")
        + pedal("marl", "switch at 35, 10 mm")
        + pedal("hedge", "switch at 35, 10 mm")
        + CHAIN
    ),
    "a strip whose pull is not known still wants two rails": (
        "strip hook {\n  wide 25 mm\n  mates loop\n}\nmounting {\n  all with hook\n}\n"
        + block("deck", "plank", *DECK, "rail 0..60 mm tape 40 mm", "rail 100..160 mm tape 40 mm")
        + pedal("marl", "switch at 35, 20 mm")
        + pedal("hedge", "switch at 35, 20 mm")
        + CHAIN
    ),
    "tall under a lid that a tier lifts it to": (
        block("deck", "plank", *DECK, "tier high 150..300 mm raised 40 mm")
        + block("case", "trunk", "lid 80 mm")
        + block("unit", "marl", "body 70 x 110 x 60 mm", *BODY[1:], "input in ts", "output out ts")
        + pedal("hedge")
        + CHAIN
    ),
    "a heel that is kept free": (
        block("deck", "plank", *DECK, "heel 60 mm")
        + pedal("marl", "switch at 35, 25 mm")
        + pedal("hedge", "switch at 35, 25 mm")
        + CHAIN
    ),
    "sizes in inches, no whole tenths of a millimetre": (
        block("deck", "plank", "size 9 x 5 in")
        + block(
            "plug",
            "slim",
            "fits ts",
            "stands out 0.741 in",
            "bend 0 in",
            "leaves at 0.4 in",
            "wide 0.6 in",
            "tall 0.6 in",
        )
        + INCHES.format("marl")
        + INCHES.format("hedge")
        + CHAIN
    ),
    "worked by hand": (
        block("deck", "plank", "size 170 x 130 mm")
        + unit("marl", *BODY, "switch at 35, 25 mm", "worked by hand")
        + unit("hedge", *BODY, "switch at 35, 25 mm")
        + CHAIN
    ),
}


@pytest.mark.parametrize("name", SMALL)
def test_small_boards(name: str) -> None:
    rig = results_of(SMALL[name]).rig
    laid, lacking = with_chosen_places(rig.replace(places={}), QUICK)
    assert not lacking
    assert set(laid.places) >= {"marl", "hedge"}
    assert [finding.message for finding in told(laid)] == []


def test_the_heel_and_the_lid_are_worked_by_hand() -> None:
    laid, _ = with_chosen_places(results_of(SMALL["a heel that is kept free"]).rig.replace(places={}), QUICK)
    assert min(place.y_mm for place in laid.places.values()) >= 60
    # a lid of 80 mm less its foam leaves less than 60 + 40 = 100 mm: marl stands on the plain deck, in front of 150 mm
    laid, _ = with_chosen_places(
        results_of(SMALL["tall under a lid that a tier lifts it to"]).rig.replace(places={}), QUICK
    )
    assert laid.places["marl"].tier is None
    assert laid.places["marl"].y_mm + 110 <= 150


def test_what_is_too_tall_everywhere_stands_as_low_as_it_can() -> None:
    """A lid of 60 mm less its foam leaves less than 60 mm: too tall on the plain deck, and no taller than it must be. On a tier over the whole
    deck there is nowhere lower."""
    text = SMALL["tall under a lid that a tier lifts it to"].replace("lid 80 mm", "lid 60 mm")
    for tiers, tier in (("150..300 mm", None), ("0..300 mm", "high")):
        rig = results_of(text.replace("150..300 mm", tiers)).rig
        laid, lacking = with_chosen_places(rig.replace(places={}), QUICK)
        assert not lacking and laid.places["marl"].tier == tier
