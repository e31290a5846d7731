"""Strips and tape: the worked rigs' tables with their arithmetic, and small boards worked by hand.

Areas are checked to the hundredth of a cm² that the sheet prints. σ: 30 kPa hook-and-loop, 120 kPa mushroom-head.
"""

from __future__ import annotations

import pytest
from small_rigs import block, results_of, unit
from written import changed, written

from rigc.analysis.mounting.mounting_strip import MountingStrip, needed_cm2, strip_count
from rigc.analysis.mounting.roll_uses import RollUses
from rigc.analysis.mounting.strip_order import StripOrder, ordered
from rigc.analysis.weight.mass import Mass
from rigc.model.geometry.rectangle import Rectangle
from rigc.traced.figure import assumed
from rigc.traced.term import number

HOME, HOME_AS_ORDERED = "examples/back-bedroom/board.rig", "tests/rigs/back-bedroom-as-ordered.rig"
TOURING = "examples/long-haul/board.rig"
# The tape lies on y = 2.5–42.5, 87.5–127.5, 160–200, 242.5–282.5. A piece begins 10 mm behind the unit's front.
HOME_AS_ORDERED_STRIPS = [
    # 1 × 25 × (22.5 + 6.5): the piece lies on y 20–94; 0.19 · 196.2 / 30 kPa
    ("plumb", 1, 74, 7.25, 12.43),
    # 2 × 25 × (22.5 + 27.5): y 20–115; 0.35 · 196.2 / 30
    ("hedge", 2, 95, 25.00, 22.89),
    # 2 × 25 × (22.5 + 32.5): y 20–120; 0.40 · 196.2 / 30
    ("marl", 2, 100, 27.50, 26.16),
    # 2 × 25 × (28 + 29.5): y 172–272; 0.40 · 196.2 / 30
    ("millpond", 2, 100, 28.75, 26.16),
    # the same; 0.42 · 196.2 / 30
    ("lant", 2, 100, 28.75, 27.47),
    # the same; 0.43 · 196.2 / 30
    ("rotunda", 2, 100, 28.75, 28.12),
]
TOURING_STRIPS = [
    # (unit, n, piece, n × 25 × piece, mass · 196.2 / 120 kPa); one strip more from 1 kg: signalbox, the three treadles
    ("signalbox", 5, 90, 112.50, 26.16),
    ("plumb", 1, 74, 18.50, 3.11),
    ("lever", 3, 220, 165.00, 16.35),
    ("slipway", 3, 240, 180.00, 19.62),
    ("teeter", 3, 230, 172.50, 26.16),
    ("claypit", 2, 92, 46.00, 5.40),
    ("lapwing", 2, 100, 50.00, 5.89),
    ("marl", 2, 100, 50.00, 6.54),
    ("bramble", 2, 100, 50.00, 6.21),
    ("settle", 2, 100, 50.00, 6.54),
    ("rotundaxl", 2, 105, 52.50, 10.14),
    ("lantxl", 2, 105, 52.50, 10.14),
    ("weathervane", 2, 105, 52.50, 9.81),
    ("stepladder", 2, 105, 52.50, 7.36),
    ("echomill", 2, 105, 52.50, 7.52),
    ("heron", 2, 75, 37.50, 7.36),
]
BOARD = """
strip bench-hook like hook {
  pull 30 kPa
}
unit marl {
  body 70 x 120 x 55 mm
  mass 400 g
}
deck board {
  size 420 x 320 mm
  rail 0..45 mm tape 40 mm
  rail 85..130 mm tape 40 mm
  tier back 140..320 mm raised 50 mm
}
"""


def strips(path: str) -> dict[str, tuple[int, float, float, float]]:
    """Number, piece in mm, engaged and needed cm² by unit."""
    found = changed(path).get(MountingStrip)
    assert not found.unknown
    return {
        unit.thing: (
            unit.count,
            unit.piece_mm,
            round(unit.engaged_cm2 or 0, 2),
            round(unit.needed_cm2 or 0, 2),
        )
        for unit in found.units
    }


def test_the_home_board_as_ordered() -> None:
    assert strips(HOME_AS_ORDERED) == {unit: tuple(row) for unit, *row in HOME_AS_ORDERED_STRIPS}


def test_the_touring_board() -> None:
    assert strips(TOURING) == {unit: tuple(row) for unit, *row in TOURING_STRIPS}


def test_the_mini_unit_on_mushroom_strip() -> None:
    plumb = changed(HOME).get(MountingStrip).of("plumb")
    assert plumb is not None
    assert plumb.needed_cm2 == pytest.approx(3.1065)  # 0.19 · 196.2 / 120 kPa
    # its middle is at 265 + 23 = 288, so the strip and its partners begin at 275.5; one partner on each of two tapes
    assert plumb.deck_pieces == (Rectangle(275.5, 2.5, 25, 40), Rectangle(275.5, 87.5, 25, 40))


def test_a_piece_is_cut_to_whole_millimetres() -> None:
    # 3.7 in are 93.98 mm, less 20 are 73.98: cut to 73, so that it is nowhere longer than it may be
    plumb = changed(HOME, ("46 x 94 x 50 mm", "1.811 x 3.7 x 1.97 in")).get(MountingStrip).of("plumb")
    assert plumb is not None
    assert plumb.piece_mm == 73


def orders(path: str) -> dict[str | None, tuple[float, ...]]:
    """On units, deck and rails, and the order, in mm by strip."""
    kinds = changed(path).get(StripOrder).kinds
    return {
        kind.strip: (kind.on_units_mm, kind.on_deck_mm, kind.on_rails_mm, float(kind.order) * 1000) for kind in kinds
    }


def test_orders_of_the_home_board_as_ordered() -> None:
    # 74 + 190 + 4 × 200 = 1064, × 1.1 = 1170.4; rails 4 × (420 − 10) = 1640, × 1.1 = 1804
    assert orders(HOME_AS_ORDERED) == {"hook": (1064, 0, 0, 1200), "rail-tape": (0, 0, 1640, 1900)}


def test_orders_of_the_home_board() -> None:
    # hook 1064 − 74 = 990, × 1.1 = 1089; mushroom 74 and 2 × 40 on the deck = 154, × 1.1 = 169.4
    assert orders(HOME) == {
        "mushroom": (74, 80, 0, 200),
        "hook": (990, 0, 0, 1100),
        "rail-tape": (0, 0, 1640, 1900),
    }


def test_orders_of_the_touring_board() -> None:
    # 450 + 74 + 660 + 720 + 690 + 184 + 4 × 200 + 5 × 210 + 150 = 4778; as much on the plate; 9556 × 1.1 = 10511.6
    assert orders(TOURING) == {"mushroom": (4778, 4778, 0, 10600)}


@pytest.mark.parametrize(
    ("laid", "order"),
    [
        (1000, 1100),  # an exact multiple stays, though 1.1 * 1000 is 1100.0000000000002 in binary floats
        (1000.01, 1200),
        (0, 0),
        (90, 100),  # 99
        (91, 200),  # 100.1
    ],
)
def test_an_order_is_a_tenth_more_rounded_up(laid: float, order: int) -> None:
    assert ordered(number(laid)) == order / 1000


@pytest.mark.parametrize(
    ("width", "mass", "count"),
    [
        (49.9, 0.2, 1),
        (50, 0.2, 2),
        (119, 0.2, 2),
        (120, 0.2, 3),
        (199, 0.2, 3),
        (200, 0.2, 4),
        (49, 1.0, 2),
        (200, 0.999, 4),
    ],
)
def test_how_many_strips(width: float, mass: float, count: int) -> None:
    assert strip_count(width, mass).strips == count


def test_needed_area() -> None:
    # 1 kg · 20 · 9.81 = 196.2 N; over 100 kPa = 10 N/cm² that is 19.62 cm²
    assert needed_cm2(1, 100) == pytest.approx(19.62)


def placed(where: str, strip: str = "bench-hook", mounting: str = "") -> MountingStrip:
    """The strips of a unit of 70 × 120 mm and 0.4 kg on two rails."""
    text = f"{BOARD}place {{\n  marl {where}\n}}\nmounting {{\n  all with {strip}\n{mounting}}}\n"
    return written(text).get(MountingStrip)


def test_strips_turn_with_their_unit() -> None:
    marl = placed("at 100, 10 mm turned 90 deg").of("marl")
    assert marl is not None
    # own strips lie on 5–30 and 40–65 of the width, 10–110 of the depth; turned, the width runs from front to back
    assert marl.pieces == (Rectangle(110, 15, 100, 25), Rectangle(110, 50, 100, 25))
    # the first lies on the first tape (2.5–42.5) with all its 25 mm, the second between the tapes
    assert (marl.engaged_cm2, marl.tapes_met) == (25.00, 1)
    assert marl.deck_pieces == ()


def test_self_mating_strip_along_a_rail_needs_its_twin() -> None:
    marl = placed("at 100, 10 mm turned 90 deg", "mushroom").of("marl")
    assert marl is not None
    assert marl.deck_pieces == (Rectangle(110, 15, 100, 25),)


def test_what_lies_beyond_the_tape_does_not_count() -> None:
    marl = placed("at -5, 10 mm").of("marl")
    assert marl is not None
    # strips on x 0–25 and 35–60; the tape begins at 5: (20 + 25) × (22.5 + 32.5)
    assert marl.engaged_cm2 == pytest.approx(4.5 * 5.5)


def test_a_tier_is_a_plate() -> None:
    marl = placed("at 100, 150 mm on back").of("marl")
    assert marl is not None
    assert (marl.engaged_cm2, marl.tapes_met) == (2 * 2.5 * 10, None)
    assert marl.deck_pieces == marl.pieces


def test_what_is_held_otherwise_gets_no_strip() -> None:
    assert placed("at 100, 10 mm", mounting="  marl bolted\n").units == ()
    assert placed("under at 100, 10 mm").units == ()
    both = placed("at 100, 10 mm", mounting="  marl with mushroom\n  marl bolted\n").of("marl")
    assert both is not None
    assert (both.strip, both.fixing) == ("mushroom", "bolted")


def test_parts_of_the_base_that_a_strip_lies_over() -> None:
    text = BOARD.replace(
        "mass 400 g", "mass 400 g\n  battery-door 10 x 20 mm at 28, 50 mm\n  vent 4 x 20 mm at 32, 50 mm"
    )
    found = written(text + "place {\n  marl at 0, 0 mm turned 270 deg\n}\nmounting {\n  all with bench-hook\n}\n")
    marl = found.get(MountingStrip).of("marl")
    assert marl is not None
    assert marl.covered == ("battery-door",)  # strips on 5–30 and 40–65: the door's 28–30; the vent lies on 32–36


@pytest.mark.parametrize(
    ("door", "mass", "centres", "covered"),
    [
        # 120 mm take strips in the middle of 20, 60 and 100 mm, each 25 mm wide: on 7.5–32.5, 47.5–72.5 and 87.5–112.5
        ("30 x 20 mm at 45, 50 mm", 400, (20, 100), False),
        ("15 x 20 mm at 32.5, 50 mm", 400, (20, 60, 100), False),
        ("80 x 20 mm at 20, 50 mm", 400, (20, 60, 100), True),  # over all three
        # two strips of 25 × 70 mm are 35 cm², which at 30 kPa hold 35 × 30 / (20 × 9.80665 × 10) = 0.5353 kg
        ("30 x 20 mm at 45, 50 mm", 535, (20, 100), False),
        ("30 x 20 mm at 45, 50 mm", 536, (20, 60, 100), True),
    ],
)
def test_no_strip_lies_over_a_door_where_the_others_hold(
    door: str, mass: int, centres: tuple[float, ...], covered: bool
) -> None:
    text = (
        block("strip", "bench-hook", "wide 25 mm", "pull 30 kPa", "mates itself")
        + unit("moss", "body 120 x 90 x 50 mm", f"mass {mass} g", f"battery-door {door}")
        + block("deck", "plank", "size 400 x 300 mm")
        + "place {\n  moss at 20, 20 mm\n}\nmounting {\n  all with bench-hook\n}\n"
    )
    moss = results_of(text).get(MountingStrip).of("moss")
    assert moss is not None
    assert tuple(float(each.text) for each in moss.centres.of) == centres
    assert moss.count == len(moss.pieces) == len(centres)
    assert bool(moss.covered) is covered


def test_what_is_left_of_the_rolls() -> None:
    """So many rolls of 5 m less all pieces, which are held in tenths of a millimetre."""
    text = (
        BOARD
        + "place {\n  marl at 0, 0 mm\n}\nmounting {\n  all with long\n}\nstrip long like bench-hook {\n  roll 5 m\n}\n"
    )
    (use,) = (each for each in written(text).get(RollUses).all if each.kind.strip == "long")
    assert use.cut is not None and use.pieces
    assert float(use.cut.left) == pytest.approx(float(use.cut.rolls) * 5 - sum(use.pieces) / 10_000)


@pytest.mark.parametrize(
    ("old", "new", "missing"),
    [
        ("  mass 400 g\n", "", "its mass"),
        ("  body 70 x 120 x 55 mm\n", "", "its body"),
    ],
)
def test_a_missing_fact_is_not_nought(old: str, new: str, missing: str) -> None:
    text = BOARD.replace(old, new) + "place {\n  marl at 0, 0 mm\n}\nmounting {\n  all with bench-hook\n}\n"
    found = written(text).get(MountingStrip)
    assert found.units == ()
    assert [(unit.thing, unit.missing) for unit in found.unknown] == [("marl", missing)]


ASKEW = BOARD.replace("unit marl {", "unit marl {\n  treadle 40..55 mm")


def test_strips_of_a_treadle_that_stands_askew_turn_with_it() -> None:
    """70 × 120 turned by 30°: the rectangle around it is 70·cos 30° + 120·sin 30° = 120.622 wide and 70·sin 30° + 120·cos 30°
    = 138.923 deep, so its middle lies at (100 + 60.311, 10 + 69.462) = (160.311, 79.462). The strips' middles lie 17.5 left
    and right of it on its own width: 17.5·cos 30° = 15.155 in x and 17.5·sin 30° = 8.75 in y."""
    marl = written(
        ASKEW + "place {\n  marl at 100, 10 mm turned 30 deg\n}\nmounting {\n  all with mushroom\n}\n"
    ).get(MountingStrip).of("marl")  # fmt: skip
    assert marl is not None
    assert marl.skew_deg == 30
    middles = [(piece.x_mm + piece.width_mm / 2, piece.y_mm + piece.depth_mm / 2) for piece in marl.pieces]
    assert middles[0] == pytest.approx((145.156, 70.712), abs=1e-3)
    assert middles[1] == pytest.approx((175.467, 88.212), abs=1e-3)
    assert {(piece.width_mm, piece.depth_mm) for piece in marl.pieces} == {(25, 100)}
    # Each strip is 25 wide and crosses a tape of 40: a parallelogram of 25 / cos 30° along x and 40 in y = 1154.70 mm².
    # The first strip's corners lie at y 70.712 ± 50·cos 30° ± 12.5·sin 30° = 70.712 ± 43.301 ± 6.25, from 21.161 to 120.263;
    # its front edge rises from 21.161 (left) to 33.661 (right), so it covers the tape 2.5–42.5 only above that edge:
    #   all of the parallelogram above 33.661: 28.868 · (42.5 − 33.661) = 255.17
    #   the right triangle between: its base at 33.661 is 28.868, its height 12.5: half of 28.868 · 12.5 = 180.42
    # = 435.59. On 87.5–127.5 it ends at the rear edge, from 107.763 (left) to 120.263 (right):
    #   28.868 · (107.763 − 87.5) = 584.95, and 180.42 = 765.37
    # The second lies 17.5 further back: front edge 38.661 to 51.161. Above 38.661 a triangle is cut at 42.5:
    #   height 3.839, base there 28.868 · 3.839 / 12.5 = 8.866: half of both = 17.02
    # rear edge 125.263 to 137.763, cut at 127.5: up to 125.263 it is 28.868 · 37.763 = 1090.14; from there to 127.5 the
    #   width falls from 28.868 to 28.868 · (12.5 − 2.237) / 12.5 = 23.702: mean 26.285 · 2.237 = 58.80
    assert marl.engaged_cm2 == pytest.approx(4.3559 + 7.6537 + 0.1702 + 10.9014 + 0.5880, abs=0.001)
    assert marl.tapes_met == 2


def test_twins_of_an_askew_strip_are_trimmed_at_the_tape() -> None:
    """Along the strip the tape of 40 is 40 / cos 30° = 46.188 long in the middle, and 25 · tan 30° = 14.434 more at the edges."""
    marl = written(
        ASKEW + "place {\n  marl at 100, 10 mm turned 30 deg\n}\nmounting {\n  all with mushroom\n}\n"
    ).get(MountingStrip).of("marl")  # fmt: skip
    assert marl is not None
    first = marl.deck_pieces[0]
    assert (first.width_mm, first.depth_mm) == pytest.approx((25, 60.622), abs=1e-3)
    # the strip's middle line goes through (145.156, 70.712) and leans 30° to the left: at y 22.5 it is 48.212 · tan 30° = 27.835 right
    assert (first.x_mm + 12.5, first.y_mm + first.depth_mm / 2) == pytest.approx((172.991, 22.5), abs=1e-3)


def test_an_askew_treadle_on_a_plate_keeps_its_whole_strips() -> None:
    text = ASKEW + "place {\n  marl at 100, 150 mm turned 350 deg on back\n}\nmounting {\n  all with mushroom\n}\n"
    marl = written(text).get(MountingStrip).of("marl")
    assert marl is not None
    assert marl.skew_deg == -10
    assert marl.engaged_cm2 == pytest.approx(2 * 2.5 * 10)
    assert marl.deck_pieces == marl.pieces


def test_an_askew_quarter_turn_runs_along_the_rail() -> None:
    """Turned by 100°: strips run along x, 10° off. Each is 25 × 100 about its middle, given as 100 × 25."""
    text = ASKEW + "place {\n  marl at 100, 2 mm turned 100 deg\n}\nmounting {\n  all with mushroom\n}\n"
    marl = written(text).get(MountingStrip).of("marl")
    assert marl is not None
    assert {(piece.width_mm, piece.depth_mm) for piece in marl.pieces} == {(100, 25)}
    assert set(marl.deck_pieces) <= set(marl.pieces)


def test_tape_of_a_strip_that_mates_with_itself_on_both_faces() -> None:
    taped = BOARD.replace("tape 40 mm", "tape 25 mm of mushroom on both faces")
    rig = written(taped + "place {\n  marl at 40, 10 mm\n}\nmounting {\n  all with mushroom\n}\n")
    (unit,) = rig.get(MountingStrip).units
    assert unit.deck_pieces == ()  # the tape itself is the partner
    (kind,) = rig.get(StripOrder).kinds
    # two rails, two faces, each 420 - 10 mm
    assert (kind.strip, kind.on_deck_mm, kind.on_rails_mm) == ("mushroom", 0.0, 1640.0)


def test_tape_of_another_width_than_its_strip_is_ordered_apart() -> None:
    """The stock's mushroom strip is 25 mm wide, so 40 mm of it is not the strip that lies under the unit."""
    taped = BOARD.replace("tape 40 mm", "tape 40 mm of mushroom")
    rig = written(taped + "place {\n  marl at 40, 10 mm\n}\nmounting {\n  all with mushroom\n}\n")
    strip, tape = rig.get(StripOrder).kinds
    assert (strip.name, strip.strip, float(strip.width_mm), float(strip.on_rails_mm)) == (
        "mushroom",
        "mushroom",
        25,
        0.0,
    )
    # two rails, each 420 - 10 mm; 820 * 1.1 = 902
    assert (tape.name, tape.strip, float(tape.laid_mm), float(tape.order)) == ("mushroom 40 mm wide", None, 820.0, 1.0)
    weighs = {item.name: item.kg for item in rig.get(Mass).items}
    assert weighs["mushroom 40 mm wide"] is None  # the stock tells the mass of 25 mm alone
    # 30 g/m in stock
    assert weighs["mushroom"] == pytest.approx(strip.laid_mm / 1000 * 0.030)


def test_an_assumed_width_of_strip_says_where_pieces_lie_and_not_how_long_they_are() -> None:
    taped = BOARD.replace("  pull 30 kPa", "  wide 25 mm assumed\n  mates itself")
    rig = written(taped + "place {\n  marl at 40, 10 mm\n}\nmounting {\n  all with bench-hook\n}\n")
    (unit,) = rig.get(MountingStrip).units
    assert [assumed(each) for each in (unit.size, unit.on_deck, unit.engaged)] == [False, True, True]
    kind = rig.get(StripOrder).kinds[0]
    assert [assumed(each) for each in (kind.width_mm, kind.on_deck_mm, kind.order)] == [True, False, False]
