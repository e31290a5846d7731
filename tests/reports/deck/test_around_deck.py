"""What stands around a deck in its drawings: its case, what a foot reaches, the floor below a deck at an angle. Rigs are invented."""

from __future__ import annotations

import pytest
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import block, results_of, unit

from rigc.model.deck import Deck
from rigc.reports.content import Drawing, Sheet
from rigc.reports.drawings.deck.heights import floor_at, limits_above
from rigc.reports.drawings.shapes import Box, Label, Line, Polyline
from rigc.reports.sheets.deck.deck_drawing import deck_drawing

SIZE = ("size 400 x 300 mm", "thickness 12 mm", "clearance 60 mm")


def drawings(*deck: str, more: str = "", places: tuple[str, ...] = ("marl at 10, 20 mm",)) -> dict[str, Drawing]:
    text = block("deck", "plate", *SIZE, *deck) + unit("marl", "body 70 x 120 x 55 mm") + more
    sheet: Sheet = results_of(text + block("place", "", *places)).call(deck_drawing)
    return {each.name: each for each in sheet.blocks if isinstance(each, Drawing)}


def texts(of: Drawing) -> list[str]:
    return [shape.text for shape in of.shapes if isinstance(shape, Label)]


@pytest.mark.parametrize(
    ("inside", "width", "height"),
    [
        # at 1:3, 420 x 318 are 140 x 106 mm round a deck of 133.3 x 100
        ("420 x 318 x 150 mm", 140, 106),
        # lying the other way in it
        ("318 x 420 x 150 mm", 140, 106),
    ],
)
def test_the_inside_of_the_case_is_drawn_about_the_deck(inside: str, width: float, height: float) -> None:
    plan = drawings(more=block("case", "trunk", f"inside {inside}"))["plan-plate"]
    deck = next(shape for shape in plan.shapes if isinstance(shape, Box) and shape.height == 100)
    (case,) = [shape for shape in plan.shapes if isinstance(shape, Box) and shape.pattern == "dash-dot"]
    assert plan.scale == 3
    assert (case.width, case.height) == pytest.approx((width, height))
    assert deck.x - case.x == pytest.approx((width - 400 / 3) / 2)
    assert deck.y - case.y == pytest.approx((height - 100) / 2)
    assert "inside of trunk, 420 × 318, drawn centred" in texts(plan)
    assert (drawing_faults(plan), overlapping_labels(plan)) == ((), ())


@pytest.mark.parametrize("inside", ["390 x 330 x 150 mm", "2000 x 1500 x 300 mm"])
def test_no_outline_of_a_case_that_is_too_small_or_has_no_room_on_the_page(inside: str) -> None:
    plan = drawings(more=block("case", "trunk", f"inside {inside}"))["plan-plate"]
    assert plan.scale == 3
    assert not [shape for shape in plan.shapes if isinstance(shape, Box) and shape.pattern == "dash-dot"]
    assert not [text for text in texts(plan) if "trunk" in text]


def test_the_reach_of_a_foot_is_the_front_third_of_its_half() -> None:
    """400 x 300 at 1:3: its middle is 66.7 mm from the right edge, the front third 33.3 mm from the front edge."""
    wishes = ("marl at 10, 20 mm", "marl within reach of left foot")
    plan = drawings(places=wishes)["plan-plate"]
    (reach,) = [shape for shape in plan.shapes if isinstance(shape, Polyline) and shape.pattern == "long-short"]
    (x1, y1), (x2, y2), (x3, y3) = reach.points
    assert (x2 - x1, y2 - y1) == pytest.approx((200 / 3, 0))
    assert (x3 - x2, y3 - y2) == pytest.approx((0, 100 / 3))
    assert {"reach of the left foot: marl", "reach of a foot"} <= set(texts(plan))
    assert (drawing_faults(plan), overlapping_labels(plan)) == ((), ())
    assert "reach of a foot" not in texts(drawings()["plan-plate"])


def test_the_floor_falls_away_behind_a_deck_at_an_angle() -> None:
    """300 mm deep at 8 degrees: tan 8° = 0.14054, so the rear edge has 60 + 42.16 = 102.2 mm below it."""
    side = drawings("angle 8 deg")["side-plate"]
    assert {"floor, at 8°", "102.2, clear"} <= set(texts(side))
    floor = next(
        shape for shape in side.shapes if isinstance(shape, Line) and shape.y1 != shape.y2 and shape.x1 != shape.x2
    )
    assert (floor.y2 - floor.y1) / (floor.x2 - floor.x1) == pytest.approx(0.14054, abs=1e-5)
    assert drawing_faults(side) == ()
    level = drawings()["side-plate"]
    assert {"floor", "60, clear"} <= set(texts(level))


def test_lid_and_inside_of_the_case_in_the_section() -> None:
    """An inside of 150 mm: 150 − 60 − 12 = 78 mm over the deck; a deck at an angle has no one level for it."""
    more = block("case", "trunk", "inside 440 x 330 x 150 mm", "lid 70 mm")
    side = drawings(more=more)["side-plate"]
    assert {"lid, 70 over deck", "case inside, 150"} <= set(texts(side))
    assert (drawing_faults(side), overlapping_labels(side)) == ((), ())
    assert "case inside, 150" not in texts(drawings("angle 8 deg", more=more)["side-plate"])


def test_levels() -> None:
    rig = results_of(block("deck", "plate", *SIZE, "angle 8 deg") + block("case", "trunk", "lid 70 mm")).rig
    deck: Deck = rig.decks["plate"]
    assert floor_at(deck, 0) == -72
    assert floor_at(deck, 300) == pytest.approx(-72 - 42.162, abs=1e-3)
    assert [limit.over_mm for limit in limits_above(rig, deck)] == [70]


def test_each_deck_lies_in_the_case_that_holds_it() -> None:
    rig = results_of(
        block("deck", "plate", *SIZE)
        + block("deck", "shelf", *SIZE)
        + block("case", "trunk", "inside 440 x 330 x 150 mm", "lid 70 mm", "holds plate")
        + block("case", "box", "inside 440 x 330 x 140 mm", "lid 50 mm", "holds shelf")
    ).rig
    told = {name: [limit.words for limit in limits_above(rig, deck)] for name, deck in rig.decks.items()}
    assert told == {
        "plate": ["lid, 70 over deck", "case inside, 150"],
        "shelf": ["lid, 50 over deck", "case inside, 140"],
    }
