"""The overlay of two revisions: of the touring board with its successor, and of small boards on which all else changes. Rigs are invented."""

from __future__ import annotations

import re

import pytest
from cases import READER
from drawing_faults import drawing_faults, overlapping_labels
from small_rigs import HEAD, block, results_of, unit
from two_boards import LONG_HAUL, LONG_HAUL_D, results_after

from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.reports.content import Drawing, NoSheet, Sheet, Table
from rigc.reports.drawings.shapes import Box, Circle, Label, Polygon, Polyline, Shape
from rigc.reports.sheets.record.overlay import overlay
from rigc.source import Source

LATER = HEAD.replace("revision A 2026-03-02", 'revision B 2026-06-02\n  follows A "a.rig"')


def made(of: Results) -> Sheet:
    sheet: Sheet = of.call(overlay)
    assert isinstance(sheet, Sheet)
    return sheet


def after(old: str, new: str, *changes: str) -> Sheet:
    """The overlay of two texts of a small rig; heads come from here, with the changes that the later one numbers."""
    head = LATER.replace('follows A "a.rig"', "\n  ".join(('follows A "a.rig"', *changes)))
    texts = {"a.rig": HEAD + old, "b.rig": head + new}
    compiled = compile_rig(lambda name: Source(name, texts[name]), "b.rig", READER)
    assert compiled.results is not None, [each.message for each in compiled.findings]
    assert not [each for each in compiled.findings if each.kind.name == "C12"]
    return made(compiled.results)


def drawings(sheet: Sheet) -> list[Drawing]:
    return [each for each in sheet.blocks if isinstance(each, Drawing)]


def drawing(sheet: Sheet, name: str) -> Drawing:
    found = sheet.block(name)
    assert isinstance(found, Drawing)
    return found


def rows(sheet: Sheet, deck: str = "plate") -> list[tuple[str, ...]]:
    table = sheet.block(f"changes-{deck}")
    assert isinstance(table, Table)
    return [tuple(cell.text for cell in row.cells) for row in table.rows]


def words(shapes: tuple[Shape, ...]) -> list[str]:
    return [shape.text for shape in shapes if isinstance(shape, Label)]


def triangles(of: Drawing) -> list[str]:
    """The numbers in the triangles, but for the one of the legend, which is the last."""
    found = []
    for shape, label in zip(of.shapes, of.shapes[1:], strict=False):
        if isinstance(shape, Polygon) and len(shape.points) == 3 and isinstance(label, Label):
            found.append(label.text)
    return found[:-1]


def plate(*more: str) -> str:
    return block("deck", "plate", "size 400 x 300 mm", "thickness 12 mm", "drop 150, 290 mm", *more)


def sized(name: str, *more: str) -> str:
    return unit(name, "body 70 x 120 x 55 mm", *more)


def test_nothing_before() -> None:
    told = results_of(sized("marl")).call(overlay)
    assert isinstance(told, NoSheet)
    assert told.reason.startswith("This revision states none that it follows")


def test_the_successor_on_the_touring_board() -> None:
    """stepladder (70 mm wide at 470, 325) and stepladder-ii (110 mm at 455, 325); jacks by hand from places and offsets:
    stepladder.in right 90: (470 + 70, 325 + 90) = (540, 415); stepladder-ii.in rear 90: (455 + 90, 325 + 125) = (545, 450);
    outs (470, 415) and (475, 450); dcs (505, 450) and (510, 450); echomill.dc (580 + 35, 450) = (615, 450).
    A zone is 920 / 8 = 115 mm wide and 480 / 6 = 80 mm deep: the middle of stepladder-ii, (510, 387.5), is in column
    510 / 115 = 4.4, the fifth, and row (480 - 387.5) / 80 = 1.2, the second: B5."""
    sheet = made(results_after(LONG_HAUL, LONG_HAUL_D))
    above, below = drawings(sheet)
    assert (above.name, below.name) == ("overlay-plate-above", "overlay-plate-below")
    assert rows(sheet) == [
        ("1", "stepladder, stepladder-ii", "'stepladder-ii' in the place of 'stepladder'", "B5", "above", "470", "325", "455", "325"),
        ("2", "lead A14", "another end: signalbox.s7 -> stepladder-ii.in; before: signalbox.s7 -> stepladder.in", "E3 → A5", "below",
         "540", "415", "545", "450"),
        ("3", "lead A15", "another end: stepladder-ii.out -> signalbox.r7; before: stepladder.out -> signalbox.r7", "A5 → E3", "below",
         "470", "415", "475", "450"),
        ("4", "lead D07", "another end: mill8.a7 -> stepladder-ii.dc; before: mill8.a7 -> echomill.dc", "D3 → A5", "below",
         "615", "450", "510", "450"),
        ("5", "lead D08", "another end: mill8.a8 -> stepladder-ii.dc; before: mill8.a8 -> stepladder.dc", "D3 → A5", "below",
         "505", "450", "510", "450"),
        ("6", "lead D16", "new: weir8.b8 -> echomill.dc", "B5 → A6", "below", "", "", "", ""),
    ]  # fmt: skip
    assert triangles(above) == ["1"]
    assert triangles(below) == ["2", "3", "4", "5", "6"]
    dashed = [s for s in above.shapes if isinstance(s, Box) and (s.pattern, s.colour) == ("dashed", "grey")]
    assert [(round(s.width, 3), round(s.height, 3)) for s in dashed] == [(14.0, 25.0)]  # 70 x 125 mm at 1:5
    bold = [s for s in above.shapes if isinstance(s, Box) and s.width_mm == 0.5 and s.fill == "white"]
    assert [(round(s.width, 3), round(s.height, 3)) for s in bold] == [(22.0, 25.0)]  # 110 x 125 mm
    lines = [(s.pattern, s.colour) for s in below.shapes if isinstance(s, Polyline)]
    assert lines == [("dashed", "grey")] * 4 + [("solid", "black")] * 5
    assert {"stepladder", "stepladder-ii", "unchanged", "as it was"} <= set(words(above.shapes))
    assert "SEEN FROM BELOW, player at the top" in words(below.shapes)


EVERYTHING_OLD = (
    plate('hole 25 mm at 200, 20 mm "mains lead"')
    + block("panel", "rear", "jack l ts at 380, 290 mm", "jack r ts at 390, 260 mm")
    + "".join(map(sized, ("stays", "moves", "turns", "goes", "sinks", "grows")))
    + block("place", "", "stays at 10, 10 mm", "moves at 100, 10 mm", "turns at 190, 20 mm", "goes at 10, 160 mm",
            "sinks at 100, 160 mm", "grows at 320, 20 mm")
)  # fmt: skip
EVERYTHING_NEW = (
    plate('hole 25 mm at 210, 20 mm "mains lead"', "hole 8 mm at 300, 280 mm").replace("size 400", "size 410")
    + block("panel", "rear", "jack l ts at 370, 290 mm", "jack x ts at 350, 290 mm")
    + "".join(map(sized, ("stays", "moves", "turns", "sinks")))
    + unit("grows", "body 75 x 125 x 55 mm")
    + block("unit", "comes", "body 60 x 60 x 40 mm", "midi in midi mini-trs")
    + block("place", "", "stays at 10, 10 mm", "moves at 110, 12 mm", "turns at 190, 20 mm turned 90 deg",
            "comes at 300, 200 mm", "sinks under at 100, 160 mm", "grows at 320, 20 mm")
)  # fmt: skip


def test_moved_turned_gone_new_sunk_grown() -> None:
    sheet = after(EVERYTHING_OLD, EVERYTHING_NEW)
    assert rows(sheet) == [
        ("1", "moves", "moved", "E3", "above", "100", "10", "110", "12"),
        ("2", "turns", "turned from 0° to 90°", "E5", "above", "190", "20", "190", "20"),
        ("3", "sinks", "now below the deck", "B3", "below", "100", "160", "100", "160"),
        ("4", "grows", "70 x 120 mm is now 75 x 125 mm", "E7", "above", "320", "20", "320", "20"),
        ("5", "comes", "new", "B7", "above", "", "", "300", "200"),
        ("6", "goes", "gone", "B1", "above", "10", "160", "", ""),
        ("7", "jack rear.l", "moved", "A8", "above", "380", "290", "370", "290"),
        ("8", "jack rear.x", "new", "A7", "above", "", "", "350", "290"),
        ("9", "jack rear.r", "gone", "A8", "above", "390", "260", "", ""),
        ("10", "hole 25 mm mains lead", "moved", "F5", "above", "200", "20", "210", "20"),
        ("11", "hole 8 mm", "new", "A6", "above", "", "", "300", "280"),
    ]
    above, below = drawings(sheet)
    assert sorted(triangles(above), key=int) == ["1", "2", "4", "5", "6", "7", "8", "9", "10", "11"]
    assert triangles(below) == ["3"]
    rings = [s.pattern for s in above.shapes if isinstance(s, Circle) and s.radius > 1]
    assert (rings.count("dashed"), rings.count("solid")) == (3, 4)


def test_marks_bear_the_numbers_of_the_changes() -> None:
    """A letter behind the number where a change has several marks; a letter alone where no change names what differs."""
    changes = ('change 1 design "wider" touches moves, turns, rear', 'change 4 design "fed from below" touches sinks')
    sheet = after(EVERYTHING_OLD, EVERYTHING_NEW, *changes)
    assert [(row[0], row[1]) for row in rows(sheet)] == [
        ("1a", "moves"), ("1b", "turns"), ("4", "sinks"), ("a", "grows"), ("b", "comes"), ("c", "goes"),
        ("1c", "jack rear.l"), ("1d", "jack rear.x"), ("1e", "jack rear.r"), ("d", "hole 25 mm mains lead"), ("e", "hole 8 mm"),
    ]  # fmt: skip
    above, below = drawings(sheet)
    assert sorted(triangles(above)) == ["1a", "1b", "1c", "1d", "1e", "a", "b", "c", "d", "e"]
    assert triangles(below) == ["4"]
    assert "change of the rework plan, row of the table" in words(above.shapes)


def test_nothing_changed() -> None:
    sheet = after(EVERYTHING_OLD, EVERYTHING_OLD)
    assert [each.name for each in sheet.blocks] == ["overlay-plate-above", "changes-plate"]
    assert rows(sheet) == []


def test_no_places_and_no_size() -> None:
    assert after(sized("marl"), sized("marl")).blocks[0].name == "nothing"
    bare = "deck plate {\n}\n" + sized("marl") + block("place", "", "marl at 10, 10 mm")
    assert [each.name for each in after(bare, bare).blocks] == ["unknown-plate"]


def test_a_deck_that_is_new() -> None:
    """The old one was of another name: all on it is new."""
    old = plate().replace("deck plate", "deck board") + sized("marl") + block("place", "", "marl at 10, 10 mm")
    sheet = after(old, plate() + sized("marl") + block("place", "", "marl at 10, 10 mm"))
    assert [row[1:3] for row in rows(sheet)] == [("marl", "new")]


def test_a_unit_askew() -> None:
    lever = unit("lever", "body 95 x 100 x 75 mm", "treadle 55..75 mm")
    places = [block("place", "", f"lever at 150, 60 mm turned {angle} deg") for angle in (5, 10)]
    sheet = after(plate() + lever + places[0], plate() + lever + places[1])
    assert rows(sheet)[0][2].startswith("turned from 5° to 10°")
    assert [s.pattern for s in drawings(sheet)[0].shapes if isinstance(s, Polygon) and len(s.points) == 4] == [
        "solid",
        "dashed",
    ]


def all_moved(text: str) -> str:
    """Everything that has a place stands 3 mm further to the right; revision D."""
    moved = re.sub(r" at (\d+), (\d+) mm$", lambda at: f" at {int(at[1]) + 3}, {at[2]} mm", text, flags=re.MULTILINE)
    return moved.replace("revision C", "revision D")


@pytest.mark.parametrize(
    "sheet",
    [
        pytest.param(lambda: made(results_after(LONG_HAUL, LONG_HAUL_D)), id="touring"),
        pytest.param(
            lambda: made(results_after(LONG_HAUL_D.replace("revision D", "revision C"), LONG_HAUL)), id="back"
        ),
        pytest.param(lambda: made(results_after(LONG_HAUL, all_moved(LONG_HAUL))), id="all-moved"),
        pytest.param(lambda: after(EVERYTHING_OLD, EVERYTHING_NEW), id="everything"),
        pytest.param(lambda: after(EVERYTHING_NEW, EVERYTHING_OLD), id="everything-back"),
    ],
)
def test_nothing_leaves_its_ground_or_covers_a_label(sheet: object) -> None:
    assert callable(sheet)
    found = drawings(sheet())
    assert found
    for each in found:
        assert drawing_faults(each) == (), each.name
        assert overlapping_labels(each) == (), each.name
        assert each.width_mm <= 259 and each.height_mm + 14 <= 150  # landscape of Letter and A4, scale bar besides
        assert each.scale
