"""Drawings as SVG: well formed, in true millimetres, safe against any text, the same on every run."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from small_drawings import DECK, RESPONSE, SIGNAL
from small_sheets import AWKWARD, LEADS, document

from rigc.output import html, markdown, svg
from rigc.output.formats import drawing_files, render_tables
from rigc.output.svg_shapes import element, number, tint
from rigc.reports.content import Drawing
from rigc.reports.drawings.shapes import COLOURS, PATTERNS, Box, Circle, Label, Line, Polygon, Polyline, Symbol

SVG = "{http://www.w3.org/2000/svg}"
ALL = document(SIGNAL, DECK, RESPONSE, LEADS)
HOSTILE = "</text></svg><script>alert(1)</script> \"quoted\" & 'so' \x00\x1b\ud800\ufffe " + AWKWARD


def parsed(text: str) -> ElementTree.Element:
    """The root of an SVG; fails where it is not well formed."""
    return ElementTree.fromstring(text.encode("utf-8"))


@pytest.mark.parametrize("drawing", [SIGNAL, DECK, RESPONSE], ids=lambda drawing: drawing.name)
def test_a_file_is_well_formed_and_of_true_size(drawing: Drawing) -> None:
    root = parsed(svg.render(ALL, drawing))
    height = drawing.height_mm + (12.5 if drawing.scale else 0) + 12
    assert root.tag == f"{SVG}svg"
    assert root.attrib["width"] == f"{drawing.width_mm}mm"
    assert root.attrib["height"] == f"{height:g}mm"
    assert root.attrib["viewBox"] == f"0 0 {drawing.width_mm} {height:g}"  # so one unit is one millimetre
    assert root.attrib["role"] == "img"
    named = {child.attrib.get("id"): child.text for child in root}
    title, desc = root.attrib["aria-labelledby"].split()
    assert (named[title], named[desc]) == (drawing.title, drawing.desc)


def test_a_file_says_of_which_revision_it_is() -> None:
    draft = document(DECK, draft=True)
    texts = [each.text for each in parsed(svg.render(draft, DECK)).iter(f"{SVG}text")]
    assert texts[-2] == f"DRAFT: not to build from · {DECK.title}"
    assert texts[-1] == "Night Ferry (invented) · revision C7 · 2026-03-14 · source 9f31c2ab"


def test_a_drawing_to_scale_bears_its_bar() -> None:
    assert "1:5 where the bar measures 40 mm" in svg.inline(DECK, "k")
    assert "where the bar" not in svg.inline(SIGNAL, "k")


def test_hostile_text_stays_text() -> None:
    label = Symbol(HOSTILE, (Label(5, 5, HOSTILE),))
    drawing = Drawing("bad", HOSTILE, HOSTILE, 100, 20, (label,))
    root = parsed(svg.inline(drawing, "k"))
    assert root.find(".//script") is None
    assert root.find(f".//{SVG}script") is None
    for tag in ("title", "desc", "g/title", "g/text"):
        found = root.find("/".join(f"{SVG}{part}" for part in tag.split("/")))
        assert found is not None
        assert found.text is not None
        assert found.text.startswith("</text></svg><script>alert(1)</script> \"quoted\" & 'so'")
        assert "שלום 🎸" in found.text
    assert html.render(document(drawing)).count("<script") == 0


@pytest.mark.parametrize("colour", COLOURS)
@pytest.mark.parametrize("pattern", PATTERNS)
def test_a_line_bears_its_colour_and_pattern(colour: str, pattern: str) -> None:
    (path,) = ElementTree.fromstring(f"<g>{element(Line(0, 1, 2.5, 3, colour, pattern))}</g>")
    assert path.attrib["d"] == "M0 1L2.5 3"
    assert path.attrib["stroke"] == COLOURS[colour]
    assert path.attrib["stroke-width"] == "0.25"
    dashes = tuple(float(length) for length in path.get("stroke-dasharray", "").split())
    assert dashes == PATTERNS[pattern]


def test_a_thick_line_has_longer_dashes_and_an_arrow_points_along_it() -> None:
    line, head = ElementTree.fromstring(
        f"<g>{element(Line(0, 0, 10, 0, pattern='dashed', width_mm=0.5, arrow='end'))}</g>"
    )
    assert line.attrib["stroke-dasharray"] == "3.6 1.8"
    assert head.attrib["d"] == "M10 0L7 0.5L7 -0.5Z"
    assert line.attrib["d"] == "M0 0L8.5 0"
    both = element(Polyline(((0, 0), (5, 0), (5, 5)), arrow="both"))
    assert both.count("<path") == 3


@pytest.mark.parametrize(
    "shape",
    [Box(0, 0, 10, 10), Circle(5, 5, 5), Polygon(((0, 0), (10, 0), (5, 10)))],
    ids=lambda shape: type(shape).__name__,
)
def test_fills(shape: Box | Circle | Polygon) -> None:
    looks = {fill: element(shape.replace(fill=fill)) for fill in ("", "white", "tint", "hatch", "cross-hatch", "solid")}
    assert len(set(looks.values())) == 6
    assert 'fill="#FFFFFF"' in looks["white"]
    assert f'fill="{tint("black")}"' in looks["tint"]
    assert looks["hatch"].count("<path d=") == looks[""].count("<path d=") + 1
    assert looks["cross-hatch"].count("M") > 1.6 * looks["hatch"].count("M")


def test_a_label_is_as_tall_as_it_says() -> None:
    """A capital of the sheets' typeface is 0.698 of its size, as the font states: 2.5 / 0.698 = 3.58 mm."""
    (text,) = ElementTree.fromstring(
        f"<g>{element(Label(10, 20, 'A', anchor='end', level='middle', rotation=-90))}</g>"
    )
    assert text.attrib["font-size"] == "3.58"
    assert (text.attrib["x"], text.attrib["y"]) == ("10", "21.25")
    assert text.attrib["transform"] == "rotate(-90 10 20)"
    assert text.attrib["text-anchor"] == "end"


@pytest.mark.parametrize(
    ("value", "text"), [(0, "0"), (-0.001, "0"), (1.0, "1"), (2.345, "2.35"), (100, "100"), (-3.5, "-3.5"), (1e-9, "0")]
)
def test_numbers(value: float, text: str) -> None:
    assert number(value) == text


def test_no_number_has_more_than_two_decimals() -> None:
    inside = re.sub(r"<(title|desc|text)\b.*?</\1>", "", svg.inline(RESPONSE, "k"))
    assert re.search(r"\.\d{3}", inside) is None


def test_a_page_holds_each_drawing_once_under_ids_of_its_own() -> None:
    second = ALL.replace(number=4)
    text = html.render((ALL, second))
    ids = re.findall(r'\bid="(drawing-[^"]+)"', text)
    assert len(ids) == len(set(ids)) == 2 * 2 * 3
    assert text.count("<figure") == 6
    assert text == html.render((ALL, second))


def test_markdown_links_to_the_file_beside_it() -> None:
    files = dict(drawing_files(ALL))
    assert list(files) == ["cable-list-signal.svg", "cable-list-deck.svg", "cable-list-response.svg"]
    links = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", markdown.render(ALL))
    assert links == list(files)
    assert drawing_files(document(LEADS)) == ()


def test_the_terminal_is_told_of_drawings() -> None:
    text = render_tables("text", ALL.sheet)
    assert text.endswith(
        "drawing 'signal': Signal path, everything on (invented), 180 x 62 mm\n"
        "drawing 'deck': Deck, seen from above (invented), 120 x 62 mm\n"
        "drawing 'response': Response at the first buffer (invented), 180 x 95 mm\n"
    )
    assert "drawing" not in render_tables("text", ALL.sheet, "leads")
