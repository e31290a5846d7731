"""Holes of decks: sizes that a plug needs, slots where the web would be too thin, numbers. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import worked
from small_rigs import block, results_of

from rigc.analysis.deck.zones import zone
from rigc.analysis.routes.deck_holes import DeckHole, DeckHoles
from rigc.analysis.routes.hole_sizes import drilled
from rigc.model.deck import Deck
from rigc.traced.collected import figures

LONG_HAUL = "examples/long-haul/board.rig"


def holes(board: str) -> tuple[DeckHole, ...]:
    (found,) = worked(f"examples/{board}/board.rig").get(DeckHoles).decks.values()
    return found


def test_the_hole_lets_a_plug_through_lengthwise() -> None:
    """The angled jack plug of the stock stands out 19 mm, is 17 wide and 12 high: its two least sides are 17 and 12, but 17 and 12
    are unlike, so the hole is their diagonal and a grommet of 2 mm all round. The d.c. plug is as wide as high: it is round."""
    rig = worked(LONG_HAUL).rig
    plug, round_ = rig.stock.plugs["dc-angle"], rig.stock.plugs["straight"]
    for kind in (plug, round_):
        assert kind.stand_out_mm is not None and kind.width_mm is not None and kind.height_mm is not None
        sides = sorted((kind.stand_out_mm.value, kind.width_mm.value, kind.height_mm.value))
        across = sides[1] if kind.width_mm.value == kind.height_mm.value else (sides[0] ** 2 + sides[1] ** 2) ** 0.5
        needed = drilled(rig, kind.name)
        assert needed is not None and needed >= across + 4
    assert drilled(rig, "no such plug") is None


def test_holes_become_a_slot_where_less_than_5_mm_would_be_left() -> None:
    """A02 to A17 go through every 18 mm in holes of 20 mm: one slot. A18 at 370 is 30 mm from A17 at 340: 30 - 20 = 10 mm are left."""
    found = holes("long-haul")
    slot = found[1]
    assert (slot.number, slot.x_mm, slot.to_x_mm, slot.diameter_mm) == ("H2", 70, 340, 20)
    assert [each.leads[0] for each in slot.through] == [f"A{number:02}" for number in range(2, 18)]
    assert (found[2].x_mm, found[2].to_x_mm, found[2].through[0].leads) == (370, None, ("A18",))
    assert [hole.number for hole in found] == [f"H{at}" for at in range(1, len(found) + 1)]


def test_a_gap_between_rails_is_not_drilled() -> None:
    first = holes("back-bedroom")[0]
    assert (first.open, first.diameter_mm) == (True, None)


@pytest.mark.parametrize(
    ("x", "y", "expected"),
    [(0, 0, "F1"), (99.9, 0, "F1"), (100, 0, "F2"), (800, 600, "A8"), (-5, 700, "A1"), (450, 250, "D5")],
)
def test_zones(x: float, y: float, expected: str) -> None:
    """800 x 600 mm in 8 x 6: 100 mm each; y 250 is 350 from the rear, in the fourth row."""
    of = worked(LONG_HAUL).rig.decks["plate"]
    assert of.width_mm is not None and of.depth_mm is not None
    deck: Deck = of.replace(width_mm=of.width_mm.replace(value=800.0), depth_mm=of.depth_mm.replace(value=600.0))
    assert zone(deck, x, y) == expected


def test_no_zone_without_a_size() -> None:
    assert zone(None, 1, 1) == ""


@pytest.mark.parametrize(
    ("name", "value", "formula"),
    [
        # a d.c. plug of 11 x 11 mm is round: 11 + 2 * 2 = 15 mm, for which a drill of 16 mm is sold
        ("dc-angle.drilled", "16", "(the highest of 11, 11) + 2 × 2 = 15 → 16"),
        ("plate.H4.size", "diameter 16", "16, drilled of mini-angle"),
        # the centres lie at 70 and 340 mm, and 20 / 2 mm more is cut at each end: 340 - 70 + 20 = 290
        ("plate.H2.size", "slot over all 20 × 290", "20, drilled of barrel-angle; 340 − 70 + 20 = 290 long"),
    ],
)  # fmt: skip
def test_why_a_hole_is_so_wide(name: str, value: str, formula: str) -> None:
    told = {each.name: each.reason() for each in figures(worked(LONG_HAUL).get(DeckHoles))}
    assert (told[name].value, told[name].formula) == (value, formula)


def test_a_stated_hole_is_as_it_is_stated() -> None:
    text = block("deck", "plate", "size 300 x 200 mm", "hole 25 mm at 150, 190 mm")
    (hole,) = results_of(text).get(DeckHoles).of("plate")
    assert hole.size is not None
    assert (hole.diameter_mm, hole.size.text, hole.size.reason().inputs[0].value) == (25, "diameter 25", "25")
