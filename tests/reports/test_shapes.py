"""The vocabulary of drawings: it reads on paper, for the colour-blind, and on a black-and-white copy."""

from __future__ import annotations

from math import hypot
from typing import Any

import pytest
from drawing_faults import drawing_faults
from small_drawings import DECK, RESPONSE, SIGNAL

from rigc.reports import symbols
from rigc.reports.content import Drawing
from rigc.reports.drawings.means.hatching import GAP, hatching, round_outline
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.means.scale_bar import BAR_HEIGHT, scale_bar
from rigc.reports.drawings.plot import STYLES
from rigc.reports.drawings.shapes import (
    COLOURS,
    LETTERS,
    PATTERNS,
    TEXT_COLOURS,
    Box,
    Circle,
    Label,
    Line,
    Shape,
    Symbol,
)

OKABE_ITO = {"#000000", "#0072B2", "#D55E00", "#009E73", "#CC79A7"}  # Okabe and Ito, 2002/2008
SQUARE = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0))


def contrast_on_white(code: str) -> float:
    """WCAG 2.1: (L1 + 0.05) / (L2 + 0.05), with the luminance of linear sRGB."""
    parts = [int(code[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)


@pytest.mark.parametrize(
    ("code", "contrast"),
    [("#767676", 4.54), ("#777777", 4.48), ("#0000FF", 8.59), ("#FF0000", 4.00), ("#0072B2", 5.19), ("#D55E00", 3.87)],
)
def test_the_contrast_is_computed_as_published(code: str, contrast: float) -> None:
    """Values that the Python package `wcag-contrast-ratio` gives, to 0.01."""
    assert contrast_on_white(code) == pytest.approx(contrast, abs=0.01)


@pytest.mark.parametrize("name", COLOURS)
def test_every_line_stands_out_on_white(name: str) -> None:
    """3:1 for graphics, 4.5:1 for text: WCAG 2.1, success criteria 1.4.11 and 1.4.3 (thresholds from memory)."""
    contrast = contrast_on_white(COLOURS[name])
    assert contrast >= 3
    assert (contrast >= 4.5) == (name in TEXT_COLOURS)
    assert name == "grey" or COLOURS[name] in OKABE_ITO


def test_patterns_and_curves_are_told_apart_without_colour() -> None:
    assert len(set(PATTERNS.values())) == len(PATTERNS)
    assert len({(pattern, width) for _, pattern, width in STYLES}) == len(STYLES)


@pytest.mark.parametrize("drawing", [SIGNAL, DECK, RESPONSE], ids=lambda drawing: drawing.name)
def test_the_invented_drawings_have_no_faults(drawing: Drawing) -> None:
    assert drawing_faults(drawing) == ()


@pytest.mark.parametrize(
    ("shape", "fault"),
    [
        (Line(0, 0, 10, 10, colour="pink"), "no colour 'pink'"),
        (Line(0, 0, 10, 10, pattern="wavy"), "no pattern 'wavy'"),
        (Box(0, 0, 10, 10, fill="dots"), "no fill 'dots'"),
        (Label(5, 5, "a", size_mm=1.7), "letters of 1.7 mm"),
        (Label(5, 5, "a", colour="purple"), "letters too pale"),
        (Label(5, 5, "a text that runs off the ground"), "leaves the ground"),
        (Label(15, 15, "turned", rotation=90), "leaves the ground"),
        (Circle(15, 5, 6), "leaves the ground"),
        (Symbol("moved", (Line(0, 0, 5, 0),), 18, 10), "leaves the ground"),
    ],
)
def test_a_fault_of_a_drawing_is_named(shape: Shape, fault: str) -> None:
    (told,) = drawing_faults(Drawing("small", "Small", "one shape", 20, 20, (shape,)))
    assert fault in told


def test_a_drawing_needs_a_file_name_and_words() -> None:
    assert len(drawing_faults(Drawing("a/b", "A", "", 20, 20, ()))) == 2


@pytest.mark.parametrize("falling", [False, True])
def test_hatching_fills_a_square_and_stays_inside(falling: bool) -> None:
    lines = hatching(SQUARE, falling)
    assert all(-0.01 <= value <= 20.01 for line in lines for point in line for value in point)
    slopes = {round((y2 - y1) / (x2 - x1), 6) for (x1, y1), (x2, y2) in lines}
    assert slopes == {1.0 if falling else -1.0}
    # An area hatched every GAP mm has area / GAP mm of line, to within one line at its edge.
    length = sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in lines)
    assert length == pytest.approx(400 / GAP, rel=0.06)


def test_hatching_leaves_the_hollow_of_a_concave_outline_free() -> None:
    notched = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (14.0, 20.0), (14.0, 6.0), (6.0, 6.0), (6.0, 20.0), (0.0, 20.0))
    middles = [((x1 + x2) / 2, (y1 + y2) / 2) for (x1, y1), (x2, y2) in hatching(notched)]
    assert middles
    assert not [(x, y) for x, y in middles if 6.01 < x < 13.99 and y > 6.01]


def test_hatching_of_a_circle_stays_within_it() -> None:
    lines = hatching(round_outline(10, 10, 5))
    assert lines
    assert all(hypot(x - 10, y - 10) <= 5.01 for line in lines for x, y in line)


@pytest.mark.parametrize(
    ("scale", "width", "real"), [(1, 180, 50), (5, 120, 200), (10, 180, 500), (2, 60, 50), (6, 180, 300)]
)
def test_a_scale_bar_is_true(scale: float, width: float, real: float) -> None:
    """At 1:6 a bar of 200 mm would measure 33.3 mm; one of 300 mm measures 50 mm."""
    shapes = scale_bar(scale, width, 0)
    boxes = [shape for shape in shapes if isinstance(shape, Box)]
    assert boxes[-1].x + boxes[-1].width - boxes[0].x == pytest.approx(real / scale)
    ground = Drawing("bar", "Bar", "the bar alone", 85, BAR_HEIGHT, scale_bar(scale, min(width, 85), 2))
    assert drawing_faults(ground) == ()
    texts = [shape.text for shape in shapes if isinstance(shape, Label)]
    assert texts == ["0", f"{real / 2:g}", f"{real:g} mm", f"1:{scale:g} where the bar measures {real / scale:g} mm"]


SYMBOLS = [
    symbols.earth,
    symbols.class_ii,
]


@pytest.mark.parametrize("symbol", SYMBOLS, ids=lambda symbol: symbol.__name__)
@pytest.mark.parametrize("size", [4.0, 8.0])
def test_a_symbol_is_drawn_in_its_square(symbol: Any, size: float) -> None:
    made = symbol(size / 2, size / 2, size)
    assert made.name == symbol.__name__.replace("_", " ").replace("class ii", "class II equipment")
    assert drawing_faults(Drawing("one", "One", "one symbol", size, size, (made,))) == ()
    assert not any(isinstance(shape, Label) for shape in made.shapes)


def test_text_grows_with_its_letters_and_its_size() -> None:
    assert 0 == text_width("", LETTERS) < text_width("ill", LETTERS) < text_width("WWW", LETTERS)
    assert text_width("lead", 5.0) == pytest.approx(2 * text_width("lead", 2.5))
    assert text_width("lead", 2.5, strong=True) > text_width("lead", 2.5)
