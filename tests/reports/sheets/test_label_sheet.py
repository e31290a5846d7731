"""The label sheet: sizes, both texts, and every marker drawn once at 1:1 inside its outline."""

from __future__ import annotations

import pytest
from drawing_faults import drawing_faults
from written import changed, written

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Sheet, Table
from rigc.reports.drawings.means.label_box import label_box
from rigc.reports.drawings.shapes import LARGE_LETTERS, Box, Label, Line, Symbol
from rigc.reports.sheets.bench.label_sheet import label_sheet

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def made(results: Results) -> Sheet:
    sheet: Sheet = results.call(label_sheet)
    return sheet


def rows(sheet: Sheet) -> dict[str, list[str]]:
    table = sheet.block("markers")
    assert isinstance(table, Table)
    kept = [at for at, column in enumerate(table.columns) if at != 1 and column.head != "zone"]
    return {row.cells[1].text: [row.cells[at].text for at in kept] for row in table.rows}


def drawings(sheet: Sheet) -> list[Drawing]:
    return [block for block in sheet.blocks if isinstance(block, Drawing)]


def markers(drawing: Drawing) -> list[Symbol]:
    return [shape for shape in drawing.shapes if isinstance(shape, Symbol)]


def size_at(drawing: Drawing, marker: Symbol) -> tuple[float, float]:
    """From a marker's corner to the next cut marks at its right and below."""
    lines = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.colour == "grey"]
    right = min(line.x1 for line in lines if line.x1 == line.x2 > marker.x and line.y1 <= marker.y <= line.y2)
    foot = min(line.y1 for line in lines if line.y1 == line.y2 > marker.y and line.x1 <= marker.x <= line.x2)
    return right - marker.x, foot - marker.y


def test_a_row_has_both_texts() -> None:
    # two lines of 2.5 mm, 1.5 mm between them, 1.5 mm of margin above and below: 9.5 mm; the number has a cell of its own
    assert rows(made(changed(TOURING)))["A14"] == [
        "50 × 9.5",
        "5",
        "signalbox.s7 / far stepladder.in",
        "stepladder.in / far signalbox.s7",
        "2",
    ]
    assert rows(made(changed(TOURING)))["A30"][1] == "6.5"  # the stage lead's jacket


@pytest.mark.parametrize("path", [HOME, TOURING])
def test_every_text_is_drawn_in_a_marker_of_its_own(path: str) -> None:
    results = changed(path)
    sheet = made(results)
    wanted = {line for pair in results.get(Labels).texts.values() for text in pair for line in text.split(" / ")}
    wanted |= {line for each in results.get(SpecialLeads).all for line in each.lines}
    printed: set[str] = set()
    for drawing in drawings(sheet):
        assert not drawing_faults(drawing)
        assert (drawing.width_mm <= 182, drawing.height_mm <= 200) == (True, True)
        assert drawing.scale == 1
        for marker in markers(drawing):
            number, *lines = [shape for shape in marker.shapes if isinstance(shape, Label)]
            assert (number.text, number.size_mm, number.strong) == (marker.name, LARGE_LETTERS, True)
            assert all(inside(label, size_at(drawing, marker)) for label in (number, *lines))
            printed |= {line.text for line in lines} | {f"{number.text} {line.text}" for line in lines}
    # the number is in its cell, and volts have the polarity behind them
    assert {line for line in wanted if line not in printed} == {
        line for line in wanted if f"{line}, centre −" in printed and line not in printed
    }
    assert sum(len(markers(each)) for each in drawings(sheet)) == sum(int(cells[-1]) for cells in rows(sheet).values())


def inside(label: Label, size: tuple[float, float]) -> bool:
    """Whether a line of text lies on its marker."""
    room = label_box(label)
    return room.left >= 0 and room.right <= size[0] and room.top >= 0 and room.bottom <= size[1]


def test_direct_current_is_told_with_its_polarity() -> None:
    """Lapwing of the touring rig takes 18 V from an outlet that could be set otherwise; no audio lead has volts."""
    found = rows(made(changed(TOURING)))
    assert found["D14"][2] == "weir8.b6 / far lapwing.dc / 18 V DC, centre −"
    assert not any("V DC" in cells[2] for mark, cells in found.items() if mark.startswith("A"))


def test_the_cut_marks_stand_at_every_edge_and_outside() -> None:
    """Each marker has a cross at its corner, a cut mark in line with it at the edge, and no line within but that of its cell."""
    (drawing,) = drawings(made(changed(HOME)))[:1]
    lines = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.colour == "black"]
    for marker in markers(drawing):
        width, height = size_at(drawing, marker)
        assert {marker.x, marker.x + width} <= {line.x1 for line in lines if line.x1 == line.x2}
        assert {marker.y, marker.y + height} <= {line.y1 for line in lines if line.y1 == line.y2}
        assert not any(crosses(line, (marker.x, marker.y), (width, height)) for line in lines)
        assert not any(isinstance(shape, Box) for shape in marker.shapes)


def crosses(line: Line, at: tuple[float, float], size: tuple[float, float]) -> bool:
    """Whether a line reaches into a marker."""
    left, right = sorted((line.x1, line.x2))
    top, bottom = sorted((line.y1, line.y2))
    return left < at[0] + size[0] and right > at[0] and top < at[1] + size[1] and bottom > at[1]


def test_a_template_of_one_line_makes_low_markers() -> None:
    results = changed(HOME, ("  marker 40 characters\n", '  marker 40 characters\n  label "{id} {far}"\n'))
    found = rows(made(results))
    sizes = {mark: cells[0].split(" × ")[1] for mark, cells in found.items()}
    # the number alone is 5 + 2 x 1.5 high; with volts two lines, 2.5 + 1.5 + 2.5 + 2 x 1.5
    told = {mark for mark, cells in found.items() if " / " in cells[2]}
    assert told == {mark for mark in found if mark.startswith("D")}
    assert {size for mark, size in sizes.items() if mark not in told} == {"8"}
    assert {size for mark, size in sizes.items() if mark in told and mark != "D2"} == {"9.5"}


def test_many_markers_take_several_pages() -> None:
    pages = drawings(made(changed(TOURING)))
    assert [drawing.name for drawing in pages] == [f"markers-{number}" for number in range(1, len(pages) + 1)]
    assert len(pages) > 1
    assert pages[0].title == f"Markers at 1:1, sheet 1 of {len(pages)}"


def test_no_leads_no_drawing() -> None:
    sheet = made(written(""))
    assert (rows(sheet), drawings(sheet)) == ({}, [])
