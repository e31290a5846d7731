"""The label sheet: sizes, both texts, and every marker drawn once at 1:1 inside its outline."""

from __future__ import annotations

from collections import Counter

import pytest
from drawing_faults import drawing_faults
from written import changed, written

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Sheet, Table
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import HAIR, LETTERS, Box, Label, Line
from rigc.reports.sheets.bench.label_sheet import label_sheet

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def made(results: Results) -> Sheet:
    sheet: Sheet = results.call(label_sheet)
    return sheet


def rows(sheet: Sheet) -> dict[str, list[str]]:
    table = sheet.block("markers")
    assert isinstance(table, Table)
    return {row.cells[1].text: [row.cells[0].text, *(cell.text for cell in row.cells[2:])] for row in table.rows}


def drawings(sheet: Sheet) -> list[Drawing]:
    return [block for block in sheet.blocks if isinstance(block, Drawing)]


def texts(drawing: Drawing) -> list[Label]:
    """The lines on markers: a block's size above it is strong."""
    return [shape for shape in drawing.shapes if isinstance(shape, Label) and not shape.strong]


def outlines(drawing: Drawing) -> list[Box]:
    return [shape for shape in drawing.shapes if isinstance(shape, Box)]


def test_a_row_has_both_texts() -> None:
    # two lines of 2.5 mm, 1.5 mm between them, 1.5 mm of margin above and below: 9.5 mm
    assert rows(made(changed(TOURING)))["A14"] == [
        "40 × 9.5",
        "5",
        "A14 signalbox.s7 / far stepladder.in",
        "A14 stepladder.in / far signalbox.s7",
        "2",
    ]
    assert rows(made(changed(TOURING)))["A30"][1] == "6.5"  # the stage lead's jacket


@pytest.mark.parametrize("path", [HOME, TOURING])
def test_every_text_is_drawn_in_a_marker_of_its_own(path: str) -> None:
    results = changed(path)
    sheet = made(results)
    wanted = Counter(line for pair in results.get(Labels).texts.values() for text in pair for line in text.split(" / "))
    wanted += Counter(line for each in results.get(SpecialLeads).all for line in each.lines * int(each.markers or 0))
    assert Counter(label.text for each in drawings(sheet) for label in texts(each)) == wanted
    assert sum(len(outlines(each)) for each in drawings(sheet)) == sum(int(cells[-1]) for cells in rows(sheet).values())
    for drawing in drawings(sheet):
        assert not drawing_faults(drawing)
        assert (drawing.width_mm <= 182, drawing.height_mm <= 200) == (True, True)
        assert drawing.scale == 1
        for label in texts(drawing):
            assert label.size_mm >= LETTERS
            assert sum(inside(label, box) for box in outlines(drawing)) == 1


def inside(label: Label, box: Box) -> bool:
    """Whether a line of text lies in an outline."""
    right = label.x + text_width(label.text, label.size_mm)
    across = box.x <= label.x and right <= box.x + box.width
    return across and box.y <= label.y - label.size_mm and label.y <= box.y + box.height


def test_the_cut_marks_stand_at_every_edge_and_outside() -> None:
    (drawing,) = drawings(made(changed(HOME)))[:1]
    boxes = outlines(drawing)
    lines = [shape for shape in drawing.shapes if isinstance(shape, Line)]
    upright = {line.x1 for line in lines if line.x1 == line.x2}
    level = {line.y1 for line in lines if line.y1 == line.y2}
    assert {edge for box in boxes for edge in (box.x, box.x + box.width)} == upright
    assert {edge for box in boxes for edge in (box.y, box.y + box.height)} == level
    assert all(box.width_mm == HAIR for box in boxes)
    for line in lines:
        assert not any(crosses(line, box) for box in boxes)


def crosses(line: Line, box: Box) -> bool:
    """Whether a line reaches into an outline."""
    left, right = sorted((line.x1, line.x2))
    top, bottom = sorted((line.y1, line.y2))
    return left < box.x + box.width and right > box.x and top < box.y + box.height and bottom > box.y


def test_a_template_of_one_line_makes_low_markers() -> None:
    results = changed(HOME, ("  marker 40 characters\n", '  marker 40 characters\n  label "{id} {far}"\n'))
    found = rows(made(results))
    sizes = {mark: cells[0].split(" × ")[1] for mark, cells in found.items()}
    # 2.5 + 2 x 1.5; where an outlet could be set otherwise, or a lead is a leg, one line more and 1.5 between them
    flagged = {mark for mark, cells in found.items() if " / " in cells[2]}
    assert flagged == {"D2", "D2a", "D2b"} | {mark for mark in flagged if mark.startswith("D")}
    assert {size for mark, size in sizes.items() if mark not in flagged} == {"5.5"}
    assert {size for mark, size in sizes.items() if mark in flagged and mark != "D2"} == {"9.5"}


def test_many_markers_take_several_pages() -> None:
    pages = drawings(made(changed(TOURING)))
    assert [drawing.name for drawing in pages] == [f"markers-{number}" for number in range(1, len(pages) + 1)]
    assert len(pages) > 1
    assert pages[0].title == f"Markers at 1:1, sheet 1 of {len(pages)}"


def test_no_leads_no_drawing() -> None:
    sheet = made(written(""))
    assert (rows(sheet), drawings(sheet)) == ({}, [])
