"""The plan at full size: tiles that cover the deck, overlap, and are true to size. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import sheet_of, worked
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import results_of, unit

from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.deck.tiles import LONG, OVERLAP, SHORT, tiles
from rigc.reports.drawings.shapes import Label, Line, Polyline, Shape, Symbol
from rigc.reports.sheets.deck.deck_drawing import deck_drawing
from rigc.reports.sheets.deck.plan_full_size import plan_full_size

BOARDS = ("examples/long-haul/board.rig", "examples/back-bedroom/board.rig")

# What both papers leave beside the filing edge and the margins, and under a heading: as the style allows a drawing.
WIDEST, HIGHEST = 183.0, 244.0


def tile_drawings(board: str) -> list[Drawing]:
    sheet: Sheet = sheet_of(board, plan_full_size)
    return [block for block in sheet.blocks if isinstance(block, Drawing) and block.name.startswith("full-size")]


@pytest.mark.parametrize(
    ("size", "count"), [((176, 236), 1), ((177, 236), 2), ((236, 176), 1), ((346, 466), 4), ((920, 480), 12)]
)
def test_tiles_cover_the_deck_and_overlap(size: tuple[float, float], count: int) -> None:
    """Two tiles of 176 mm that overlap by 6 mm cover 346 mm, two of 236 mm 466 mm; four of 236 mm cover 926 mm."""
    laid = tiles(*size)
    assert len(laid) == count
    assert (max(tile.area.right_mm for tile in laid), max(tile.area.rear_mm for tile in laid)) >= size
    for tile in laid:
        neighbours = [other for other in laid if other is not tile and min(other.area.overlap(tile.area)) > 0]
        beside = [other.area.overlap(tile.area)[0] for other in neighbours if other.area.y_mm == tile.area.y_mm]
        assert beside == [pytest.approx(OVERLAP)] * (tile.left + tile.right)


@pytest.mark.parametrize(
    ("size", "tile", "turned"),
    [
        ((920, 480), (235, 164), True),  # 4 columns: 914 / 4 + 6 = 234.5; 3 rows: 474 / 3 + 6 = 164; upright 6 x 3
        ((177, 200), (92, 200), False),  # 171 / 2 + 6 = 91.5; lying it takes two rows as well
        ((190, 60), (190, 60), True),  # one tile, across the paper
        ((40, 50), (60, 60), False),  # a small deck: rulers are long enough to check the print by
    ],
)
def test_tiles_of_a_line_show_alike_much(size: tuple[float, float], tile: tuple[float, float], turned: bool) -> None:
    laid = tiles(*size)
    assert {(each.area.width_mm, each.area.depth_mm) for each in laid} == {tile}
    assert {each.turned for each in laid} == {turned}
    across, along = (tile[1], tile[0]) if turned else tile
    assert across <= SHORT and along <= LONG


def shapes(of: tuple[Shape, ...]) -> list[Shape]:
    """All shapes as on the deck: a tile that lies across its paper is one symbol, turned."""
    return [inner for shape in of for inner in (shapes(shape.shapes) if isinstance(shape, Symbol) else [shape])]


def rulers(drawing: Drawing) -> tuple[Line, Line]:
    (level, upright) = (s for s in shapes(drawing.shapes) if isinstance(s, Line) and s.colour == "blue")
    return level, upright


@pytest.mark.parametrize("board", BOARDS)
def test_each_tile_fits_both_papers_and_bears_its_rulers(board: str) -> None:
    """A ruler along each of two edges, as long as what the tile shows; its ticks and numbers lie outside the picture."""
    for each in tile_drawings(board):
        assert drawing_faults(each) == (), each.name
        assert overlapping_labels(each) == (), each.name
        assert each.width_mm <= WIDEST
        assert each.height_mm <= HIGHEST
        level, upright = rulers(each)
        size = sorted((each.width_mm, each.height_mm))
        assert sorted((level.x2 - level.x1, upright.y2 - upright.y1)) == pytest.approx([size[0] - 7, size[1] - 7])
        hair = [s for s in shapes(each.shapes) if isinstance(s, Line) and s.width_mm == 0.13 and s.colour == "black"]
        ticks = [s for s in hair if s.y1 == level.y1 or s.x1 == upright.x1]
        assert len(ticks) > 40
        assert all(s.y2 > level.y1 or s.x2 < upright.x1 for s in ticks)


def test_a_number_of_a_ruler_is_the_deck_s_own_measure() -> None:
    """Tile A2 of the touring rig begins at 235 - 6 = 229 mm: 250 stands 21 mm from its left edge."""
    tile = next(each for each in tile_drawings(BOARDS[0]) if each.name.endswith("a2"))
    level, _ = rulers(tile)
    (label,) = (s for s in shapes(tile.shapes) if isinstance(s, Label) and s.text == "250")
    assert label.x - level.x1 == pytest.approx(21)


def test_holes_are_crosses_with_their_numbers_where_they_are_drilled() -> None:
    """A hole of 25 mm at 100, 50 mm; the deck of 150 x 100 mm is one tile: the centre lies 100 mm from its left edge."""
    deck = 'deck plate {\n  size 150 x 100 mm\n  hole 25 mm at 100, 50 mm "mains lead"\n}\n'
    text = deck + unit("marl", "body 30 x 40 x 55 mm") + "place {\n  marl at 10, 20 mm\n}\n"
    sheet: Sheet = results_of(text).call(plan_full_size)
    (tile,) = (each for each in sheet.blocks if isinstance(each, Drawing) and each.name.startswith("full-size"))
    level, upright = rulers(tile)
    crosses = [
        s
        for s in shapes(tile.shapes)
        if isinstance(s, Polyline) and s.width_mm == 0.13 and s.colour == "black" and len(s.points) == 2
    ]
    middles = [
        (sum(x for x, _ in s.points) / 2 - level.x1, upright.y2 - sum(y for _, y in s.points) / 2) for s in crosses
    ]
    assert middles == [pytest.approx((100, 50))] * 2
    assert "H1 Ø25" in [s.text for s in shapes(tile.shapes) if isinstance(s, Label)]


@pytest.mark.parametrize("board", BOARDS)
def test_every_hole_is_on_some_tile(board: str) -> None:
    """The numbers of the hole schedule, panel jacks among them."""
    schedule = next(
        block
        for block in sheet_of(board, deck_drawing).blocks
        if isinstance(block, Table) and block.name.startswith("holes")
    )
    told = {s.text.split(" ")[0] for each in tile_drawings(board) for s in shapes(each.shapes) if isinstance(s, Label)}
    assert {row.cells[0].text for row in schedule.rows} <= told


def test_units_stand_where_they_do_on_the_deck() -> None:
    """signalbox at 20, 15 mm of 420 mm: its left edge is 20 mm from the deck's."""
    first = next(each for each in tile_drawings(BOARDS[0]) if each.name.endswith("a1"))
    upright = sorted(
        {
            round(x1, 2)
            for shape in shapes(first.shapes)
            if isinstance(shape, Polyline) and shape.width_mm == 0.5
            for (x1, y1), (x2, y2) in zip(shape.points, shape.points[1:], strict=False)
            if x1 == x2 and abs(y1 - y2) > 60
        }
    )
    assert upright[1] - upright[0] == pytest.approx(20)


def test_every_unit_on_top_is_named_on_some_tile() -> None:
    of = worked(BOARDS[0])
    told = {
        shape.text for each in tile_drawings(BOARDS[0]) for shape in shapes(each.shapes) if isinstance(shape, Label)
    }
    assert {name for name, place in of.rig.places.items() if not place.under} <= told


def test_nothing_to_print() -> None:
    sheet: Sheet = results_of(unit("marl")).call(plan_full_size)
    (told,) = sheet.blocks
    assert isinstance(told, Paragraph)
    assert "nothing to print" in told.lines[0]
