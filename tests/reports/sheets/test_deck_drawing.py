"""The deck drawing of the worked boards, of a board whose plugs collide, and of small decks. Rigs are invented."""

from __future__ import annotations

from itertools import pairwise

import pytest
from cases import sheet_of, worked
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import block, results_of, unit

from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.shapes import Box, Circle, Label, Line, Polygon, Shape, Symbol
from rigc.reports.sheets.deck.deck_drawing import deck_drawing

BOARDS = (
    "examples/long-haul/board.rig",
    "examples/back-bedroom/board.rig",
    "tests/rigs/long-haul-as-ordered.rig",
    "tests/rigs/salt-pan.rig",
)


def made(of: Results) -> Sheet:
    sheet: Sheet = of.call(deck_drawing)
    return sheet


def drawing(sheet: Sheet, name: str) -> Drawing:
    block = sheet.block(name)
    assert isinstance(block, Drawing)
    return block


def labels(shapes: tuple[Shape, ...]) -> list[Label]:
    """All labels, those of flags too."""
    inner = [labels(shape.shapes) if isinstance(shape, Symbol) else [shape] for shape in shapes]
    return [shape for each in inner for shape in each if isinstance(shape, Label)]


def words(shapes: tuple[Shape, ...]) -> list[str]:
    return [shape.text for shape in labels(shapes)]


def label(of: Drawing, text: str) -> Label:
    return next(shape for shape in labels(of.shapes) if shape.text == text)


def rows(sheet: Sheet, name: str) -> list[tuple[str, ...]]:
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [tuple(cell.text for cell in row.cells) for row in table.rows]


def small(*deck: str, more: str = "", place: str = "marl at 10, 20 mm") -> Results:
    """A deck of 300 x 200 mm with a unit of 70 x 120 mm on it."""
    text = block("deck", "plate", "size 300 x 200 mm", "thickness 12 mm", *deck)
    text += unit("marl", "body 70 x 120 x 55 mm", "switch at 35, 25 mm latching")
    return results_of(text + more + block("place", "", place))


@pytest.mark.parametrize("board", BOARDS)
def test_nothing_leaves_its_ground_or_covers_a_label(board: str) -> None:
    drawings = [each for each in sheet_of(board, deck_drawing).blocks if isinstance(each, Drawing)]
    assert drawings
    for each in drawings:
        assert drawing_faults(each) == (), each.name
        assert overlapping_labels(each) == (), each.name
        assert each.width_mm <= 259 and each.height_mm + 12.5 <= 159.5  # landscape of Letter and A4, scale bar besides


def test_every_unit_is_named_in_the_plan_and_every_lead_in_a_view() -> None:
    of = worked(BOARDS[0])
    sheet = made(of)
    plan = words(drawing(sheet, "plan-plate").shapes)
    assert {name for name, place in of.rig.places.items() if not place.under} <= set(plan)
    views = [each for each in sheet.blocks if isinstance(each, Drawing) and "below" in each.name]
    texts = [text for view in (*views, drawing(sheet, "plan-plate")) for text in words(view.shapes)]
    told = {word for text in texts for word in text.replace(",", "").split()}
    assert {f"A{number:02}" for number in range(1, 29)} | {f"D{number:02}" for number in range(1, 16)} <= told
    assert {"M01", "M02", "M03", "M04", "C01", "mill8", "weir8", "canaltwo", "fan4"} <= told


@pytest.mark.parametrize("board", BOARDS)
def test_what_hangs_below_is_named_in_each_view_from_below(board: str) -> None:
    of = worked(board)
    views = [each for each in made(of).blocks if isinstance(each, Drawing) and each.name.startswith("below")]
    hanging = {name for name, place in of.rig.places.items() if place.under}
    assert hanging and len(views) > 1
    for view in views:
        assert hanging <= set(words(view.shapes)), view.name


def test_plan_is_at_true_scale() -> None:
    """920 x 480 mm at 1:5 are 184 x 96 mm; signalbox is 420 x 110 mm."""
    plan = drawing(sheet_of(BOARDS[0], deck_drawing), "plan-plate")
    sizes = {(shape.width, shape.height) for shape in plan.shapes if isinstance(shape, Box)}
    assert plan.scale == 5
    assert (184.0, 96.0) in sizes
    assert any(size == pytest.approx((84.0, 22.0)) for size in sizes)


def test_view_from_below_has_the_player_at_the_top_and_left_at_the_left() -> None:
    sheet = sheet_of(BOARDS[0], deck_drawing)
    above, below = drawing(sheet, "plan-plate"), drawing(sheet, "below-plate-power")
    assert "SEEN FROM BELOW, player at the top" in words(below.shapes)
    assert label(above, "signalbox").y > label(above, "lantxl").y
    assert label(below, "mill8").y < label(below, "canaltwo").y  # y 185 and 390 from the player
    assert label(below, "mill8").x < label(below, "canaltwo").x
    assert label(below, "F").y < label(below, "A").y and label(above, "F").y > label(above, "A").y


def test_where_things_hang_is_told_in_each_view_from_below_from_the_datum_at_the_upper_left() -> None:
    """Of long-haul hang mill8 at 60, 200, weir8 at 330, 330, fan4 at 560, 200 and canaltwo at 690, 340 mm, on a deck of 920 x 480 mm."""
    below = drawing(sheet_of(BOARDS[0], deck_drawing), "below-plate-power")
    across = [shape.text for shape in labels(below.shapes) if shape.rotation == -90 and shape.text.isdigit()]
    along = [shape.text for shape in labels(below.shapes) if shape.anchor == "end" and shape.text.isdigit()]
    assert sorted(map(int, across)) == [0, 60, 330, 560, 690, 920]
    assert [each for each in along if each not in across] == ["200", "340", "480"] and along.count("330") == 2
    assert "datum, 0, 0" in words(below.shapes)


def test_each_view_from_below_shows_one_class_and_dashes_only_what_is_covered() -> None:
    sheet = sheet_of(BOARDS[0], deck_drawing)
    letters = {"audio": {"A"}, "power": {"D"}, "control": {"M", "C"}}
    for name, own in letters.items():
        view = drawing(sheet, f"below-plate-{name}")
        leads = {text[0] for text in words(view.shapes) if text[0].isalpha() and text[1:3].isdigit()}
        assert leads == own
        patterns = {(shape.pattern, shape.width_mm) for shape in view.shapes if isinstance(shape, Line)}
        assert patterns <= {("solid", 0.5), ("solid", 0.25), ("solid", 0.13), ("dashed", 0.25)}


def test_elevations() -> None:
    """From the rear the player's right is at the left; what stands wholly behind others has no name there."""
    sheet = sheet_of(BOARDS[0], deck_drawing)
    rear, side = drawing(sheet, "rear-plate"), drawing(sheet, "side-plate")
    assert label(rear, "teeter").x < label(rear, "rotundaxl").x
    assert {"l", "r", "mains", "mill8", "weir8", "95, teeter", "12, deck", "65, clear"} <= set(words(rear.shapes))
    assert "plumb" not in words(rear.shapes)
    assert rear.caption == "Behind others: plumb, claypit, bramble."
    for each in (rear, side):
        lines = [
            s for s in each.shapes if isinstance(s, Line) and s.x1 == s.x2 and (s.width_mm, s.colour) == (0.13, "grey")
        ]
        for way in (1, -1):  # those of what hangs go down, those of what stands up: none runs along another
            leaders = sorted(s.x1 for s in lines if (s.y2 - s.y1) * way > 0)
            assert min(b - a for a, b in pairwise(leaders)) > 1.4
    assert "lid, 120 over deck" in words(side.shapes)
    assert label(side, "teeter").x < label(side, "heron").x


@pytest.mark.parametrize("deck", [(), ("clearance 20 mm",)])
def test_what_hangs_deeper_than_the_floor_is_drawn_all_the_same(deck: tuple[str, ...]) -> None:
    of = small(*deck, place="marl under at 10, 20 mm")
    for name in ("rear-plate", "side-plate"):
        assert drawing_faults(drawing(made(of), name)) == ()


def test_of_things_as_tall_the_nearest_to_the_eye_bears_the_height() -> None:
    """Both are 55 mm high: rear-most is lant, right-most is marl."""
    more = unit("lant", "body 70 x 60 x 55 mm")
    sheet = made(small(more=more, place="marl at 200, 10 mm\n  lant at 10, 135 mm"))
    assert "55, lant" in words(drawing(sheet, "rear-plate").shapes)
    assert "55, marl" in words(drawing(sheet, "side-plate").shapes)


def test_elevations_show_raised_tiers() -> None:
    """The deck is 200 mm deep; a tier from 100 to 200 mm, raised by 45 mm, its plate as thick as the deck: 12 mm.

    From the side at the scale of the drawing: the plate from 100 mm on, its upper edge 45 mm over the deck's, with marl on it.
    """
    sheet = made(small("tier upper 60..200 mm raised 45 mm", place="marl at 10, 70 mm on upper"))
    side, rear = drawing(sheet, "side-plate"), drawing(sheet, "rear-plate")
    for each in (side, rear):
        assert "tier upper, 45 over the deck" in words(each.shapes)
        assert drawing_faults(each) == ()
        assert overlapping_labels(each) == ()
        deck, plate = sorted(
            (s for s in each.shapes if isinstance(s, Box) and s.fill == "cross-hatch"), key=lambda s: -s.y
        )
        assert (deck.y - plate.y) * each.scale == pytest.approx(45)
        assert plate.height * each.scale == deck.height * each.scale == pytest.approx(12)
        marl = next(s for s in each.shapes if isinstance(s, Box) and s.fill == "white" and s.width_mm == 0.5)
        assert marl.y + marl.height == pytest.approx(plate.y)
    deck, plate = sorted((s for s in side.shapes if isinstance(s, Box) and s.fill == "cross-hatch"), key=lambda s: -s.y)
    assert (plate.x - deck.x) * side.scale == pytest.approx(60)
    assert plate.x + plate.width == pytest.approx(deck.x + deck.width)


def test_what_stands_low_behind_a_tier_is_not_named_from_the_rear() -> None:
    """The unit is 55 mm high, the tier behind it 60 mm: from the rear nothing of it is seen; at 45 mm its top is."""
    for raised, named in ((60, False), (45, True)):
        sheet = made(small(f"tier upper 150..200 mm raised {raised} mm"))
        rear = drawing(sheet, "rear-plate")
        assert ("marl" in words(rear.shapes)) is named
        assert rear.caption == ("" if named else "Behind others: marl.")
        assert "marl" in words(drawing(sheet, "side-plate").shapes)


def squares(of: Drawing) -> set[str]:
    """The jacks that are marked as without a plug."""
    return {s.name.removesuffix(", no plug") for s in of.shapes if isinstance(s, Symbol) and s.name.endswith("no plug")}


def test_a_jack_without_a_plug_is_marked_where_it_is() -> None:
    """marl at 100, 20 mm: its thru 30 mm from the left on its rear side (y 120 mm) is at (130, 140) mm. The wireless input is none."""
    jacks = ("input in wireless", "output out ts left 80 mm up 25 mm", "output thru ts rear 30 mm up 25 mm")
    text = block("unit", "marl", "body 70 x 120 x 55 mm", *jacks)
    text += (
        block("unit", "lant", "body 70 x 120 x 55 mm", "input in ts right 80 mm up 25 mm") + "chain marl.out -> lant\n"
    )
    text += block("deck", "plate", "size 300 x 200 mm")
    sheet = made(results_of(text + block("place", "", "marl at 100, 20 mm", "lant at 10, 20 mm")))
    plan = drawing(sheet, "plan-plate")
    assert squares(plan) == {"marl.thru"}
    (square,) = (s.shapes[0] for s in plan.shapes if isinstance(s, Symbol) and s.name == "marl.thru, no plug")
    corner = next(s for s in plan.shapes if isinstance(s, Box) and s.width == pytest.approx(300 / plan.scale))
    assert isinstance(square, Box)
    assert (square.x + square.width / 2 - corner.x) * plan.scale == pytest.approx(130)
    assert (corner.y + corner.height - square.y - square.height / 2) * plan.scale == pytest.approx(140)
    assert "jack without a plug" in words(plan.shapes)


@pytest.mark.parametrize(("view", "marked"), [("power", {"weir8.b8"}), ("audio", set())])
def test_each_view_from_below_marks_what_is_spare_of_its_class(view: str, marked: set[str]) -> None:
    below = drawing(sheet_of(BOARDS[0], deck_drawing), f"below-plate-{view}")
    assert squares(below) == marked
    assert ("jack or outlet without a plug" in words(below.shapes)) is bool(marked)


def test_hole_schedule() -> None:
    """A stated hole, a foot 20 mm in, a drop line that is not used, and none in use. 300 x 200 mm in 8 x 6 zones: 37.5 x 33.3 mm each."""
    holes = rows(made(small('hole 25 mm at 150, 190 mm "mains lead"', "feet 20 mm in", "drop 150 mm")), "holes-plate")
    assert holes == [
        ("H1", "150", "190", "A5", "diameter 25 mm", "mains lead"),
        ("H2", "20", "20", "F1", "to suit the part; measure it", "foot"),
        ("H3", "280", "20", "F8", "to suit the part; measure it", "foot"),
        ("H4", "20", "180", "A1", "to suit the part; measure it", "foot"),
        ("H5", "280", "180", "A8", "to suit the part; measure it", "foot"),
    ]
    rails = rows(sheet_of(BOARDS[1], deck_drawing), "holes-board")
    assert rails[0] == ("H1", "32", "65", "E1", "open between the rails", "leads: A4")


def test_keep_out_reserved_room_and_tier_are_drawn() -> None:
    of = small('keep-out 40 x 30 mm at 250, 160 mm "handle"', "tier rear 150..200 mm raised 40 mm",
               place='marl at 10, 20 mm\n  reserve 60 x 40 mm at 200, 20 mm "spare"')  # fmt: skip
    plan = drawing(made(of), "plan-plate")
    fills = {shape.fill for shape in plan.shapes if isinstance(shape, Box)}
    assert {"cross-hatch", "hatch"} <= fills
    assert {"0", "20", "150", "200"} <= set(
        words(plan.shapes)
    )  # the front edge, marl, the tier from its front to its rear
    assert {"keep out: handle", "reserved: spare", "tier rear, 40 up"} <= set(words(plan.shapes))


def test_turned_and_askew() -> None:
    """A quarter turn counter-clockwise takes the switch from the front to the right; a treadle askew has a turned outline."""
    quarter = drawing(made(small(place="marl at 10, 20 mm turned 90 deg")), "plan-plate")
    dots = [shape for shape in quarter.shapes if isinstance(shape, Circle) and shape.fill == "solid"]
    left, top, scale = 16.0, 9.5, quarter.scale
    assert (dots[0].x, dots[0].y) == pytest.approx((left + (10 + 95) / scale, top + (200 - 55) / scale))
    treadle = unit("lever", "body 95 x 100 x 75 mm", "treadle 55..75 mm")
    askew = drawing(made(small(more=treadle, place="lever at 50, 20 mm turned 10 deg")), "plan-plate")
    assert [shape for shape in askew.shapes if isinstance(shape, Polygon) and shape.fill == "white"]


def test_clash_details() -> None:
    """Flat plugs of 27 mm on a pitch of 18 mm: short by 9 mm, one drawing for the switcher's many jacks."""
    sheet = sheet_of(BOARDS[2], deck_drawing)
    details = [each for each in sheet.blocks if isinstance(each, Drawing) and each.name.startswith("clash")]
    assert [detail.title for detail in details] == ["Clash of plugs: signalbox.s1 and signalbox.r1"]
    assert details[0].scale == 1
    assert "needed (27 + 27)/2 = 27 mm" in words(details[0].shapes)
    assert "short by 9 mm" in words(details[0].shapes)


def test_nothing_placed() -> None:
    told = made(results_of(unit("marl"))).block("nothing")
    assert isinstance(told, Paragraph)
    assert "state a deck" in told.lines[0]


def test_a_legend_explains_only_what_is_drawn() -> None:
    plan = drawing(made(small()), "plan-plate")
    signs = [shape for shape in plan.shapes if isinstance(shape, Symbol) and not shape.name]
    assert len(signs) == 2  # the foot switch and the datum; no plug, knob or drop line
    assert "foot switch" in words(plan.shapes) and "knob" not in words(plan.shapes)


def test_the_hole_schedule_says_where_each_lead_goes_through() -> None:
    """On one drop line A5 goes through at 40 and 335, A6 at 280 and 520: seven holes of five leads, from left to right."""
    holes = rows(sheet_of("examples/tide-line/board.rig", deck_drawing), "holes-plate")
    assert [(row[1], row[5]) for row in holes if row[2] == "150"] == [
        ("40", "leads: A5"),
        ("85", "leads: D3"),
        ("205", "leads: D2"),
        ("280", "leads: A6"),
        ("335", "leads: A5"),
        ("362", "leads: D1"),
        ("520", "leads: A6"),
    ]
