"""The plan at full size: tiles that cover the deck, overlap, and are true to size. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import results_of, unit

from rigc.reports.content import Drawing, Paragraph, Sheet
from rigc.reports.drawings.deck.tiles import OVERLAP, TILE_HEIGHT, TILE_WIDTH, tiles
from rigc.reports.drawings.shapes import Label, Polyline
from rigc.reports.sheets.deck.plan_full_size import plan_full_size

BOARDS = ("examples/long-haul/board.rig", "examples/back-bedroom/board.rig")

# The paper less the margins of the style (10, 15 and 14 mm); what a heading takes above a drawing comes off the height.
A4_WIDTH, LETTER_WIDTH, LETTER_HEIGHT, DRAWN_HEIGHT = 190.0, 195.9, 250.4, 225.0


def tile_drawings(board: str) -> list[Drawing]:
    sheet: Sheet = results(ROOT / board).call(plan_full_size)
    return [block for block in sheet.blocks if isinstance(block, Drawing) and block.name.startswith("full-size")]


@pytest.mark.parametrize(
    ("size", "count"), [((182, 190), 1), ((183, 190), 2), ((354, 370), 4), ((355, 370), 6), ((920, 480), 18)]
)
def test_tiles_cover_the_deck_and_overlap(size: tuple[float, float], count: int) -> None:
    """Two tiles of 182 mm that overlap by 10 mm cover 354 mm."""
    laid = tiles(*size)
    assert len(laid) == count
    assert (max(tile.area.right_mm for tile in laid), max(tile.area.rear_mm for tile in laid)) >= size
    for tile in laid:
        neighbours = [other for other in laid if other is not tile and min(other.area.overlap(tile.area)) > 0]
        beside = [other.area.overlap(tile.area)[0] for other in neighbours if other.area.y_mm == tile.area.y_mm]
        assert beside == [pytest.approx(OVERLAP)] * (tile.left + tile.right)


@pytest.mark.parametrize(
    ("size", "tile"),
    [
        ((920, 480), (162, 167)),  # 6 columns: 910 / 6 + 10 = 161.7; 3 rows: 470 / 3 + 10 = 166.7
        ((183, 190), (120, 190)),  # two columns of 96.5 are too narrow for the square; one row is a whole tile
        ((600, 200), (158, 120)),  # 590 / 4 + 10 = 157.5; two rows of 105 are too low for the square
    ],
)
def test_tiles_of_a_line_show_alike_much(size: tuple[float, float], tile: tuple[float, float]) -> None:
    laid = tiles(*size)
    assert {(each.area.width_mm, each.area.depth_mm) for each in laid} == {tile}
    assert tile[0] <= TILE_WIDTH and tile[1] <= TILE_HEIGHT


def test_narrow_tiles_hold_their_heading_and_square() -> None:
    text = (
        "deck plate {\n  size 183 x 200 mm\n}\n"
        + unit("marl", "body 70 x 120 x 55 mm")
        + "place {\n  marl at 10, 20 mm\n}\n"
    )
    sheet: Sheet = results_of(text).call(plan_full_size)
    drawings = [block for block in sheet.blocks if isinstance(block, Drawing) and block.name.startswith("full-size")]
    assert len(drawings) == 4
    for each in drawings:
        assert drawing_faults(each) == (), each.name
        assert overlapping_labels(each) == (), each.name


@pytest.mark.parametrize("board", BOARDS)
def test_each_tile_fits_both_papers_and_bears_its_square(board: str) -> None:
    for each in tile_drawings(board):
        assert drawing_faults(each) == (), each.name
        assert overlapping_labels(each) == (), each.name
        assert each.scale == 1
        assert each.width_mm <= min(A4_WIDTH, LETTER_WIDTH)
        assert each.height_mm + 14 <= min(DRAWN_HEIGHT, LETTER_HEIGHT)
        (square,) = [shape for shape in each.shapes if isinstance(shape, Polyline) and shape.colour == "blue"]
        xs, ys = zip(*square.points, strict=True)
        assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx((100, 100))


def test_units_stand_where_they_do_on_the_deck() -> None:
    """signalbox at 20, 15 mm of 420 mm: its left edge is 20 mm from the deck's, and B tiles go on where A tiles end."""
    first = next(each for each in tile_drawings(BOARDS[0]) if each.name.endswith("a1"))
    upright = sorted(
        {
            round(x1, 2)
            for shape in first.shapes
            if isinstance(shape, Polyline) and shape.width_mm == 0.5
            for (x1, y1), (x2, y2) in zip(shape.points, shape.points[1:], strict=False)
            if x1 == x2 and abs(y1 - y2) > 60
        }
    )
    assert upright[1] - upright[0] == pytest.approx(20)
    assert first.width_mm == pytest.approx(162 + 4)
    assert first.height_mm == pytest.approx(167 + 9)


def test_every_unit_on_top_is_named_on_some_tile() -> None:
    of = results(ROOT / BOARDS[0])
    told = {shape.text for each in tile_drawings(BOARDS[0]) for shape in each.shapes if isinstance(shape, Label)}
    assert {name for name, place in of.rig.places.items() if not place.under} <= told


def test_nothing_to_print() -> None:
    sheet: Sheet = results_of(unit("marl")).call(plan_full_size)
    (told,) = sheet.blocks
    assert isinstance(told, Paragraph)
    assert "nothing to print" in told.lines[0]
