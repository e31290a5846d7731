"""A copy without colour: what the colours come to in grey, and that nothing is told apart by colour or width of line alone."""

from __future__ import annotations

import re

import pytest
from small_sheets import CAUTION, COLUMNS, document

from rigc.output import html
from rigc.record import Record
from rigc.reports.content import Cell, Row, Table
from rigc.reports.drawings.deck.legend import SIGNS
from rigc.reports.drawings.overlay.legend import SIGNS as CHANGES
from rigc.reports.drawings.plot import STYLES as CURVES
from rigc.reports.drawings.shapes import COLOURS, PATTERNS, TEXT_COLOURS, Box, Circle, Line, Shape
from rigc.resources import folder

CSS = (folder("templates") / "sheet.css").read_text("utf-8")
THEMES = [dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", root)) for root in re.findall(r":root \{(.*?)\}", CSS, re.DOTALL)]
LIGHT, DARK, PRINT = THEMES[0], THEMES[1], THEMES[0] | THEMES[2]


def luminance(code: str) -> float:
    """Relative luminance after WCAG 2.2 (from memory): what a grey copy keeps of a colour, 0 black to 1 white."""
    parts = (int(code[at : at + 2], 16) / 255 for at in (1, 3, 5))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio after WCAG 2.2 (from memory), 1 to 21."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_luminance_by_hand() -> None:
    """#767676: (118 / 255 + 0.055) / 1.055 = 0.4908; to the power of 2.4: 0.1812. On white 1.05 / 0.2312 = 4.54."""
    assert luminance("#767676") == pytest.approx(0.1812, abs=0.0001)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("theme", [LIGHT, DARK, PRINT], ids=["light", "dark", "print"])
def test_all_letters_stand_out_in_grey(theme: dict[str, str]) -> None:
    for letters in ("ink", "faint", "warn"):
        assert contrast(theme[letters], theme["paper"]) >= 4.5
    assert contrast(theme["rule"], theme["paper"]) >= 3 or theme is DARK  # rules only guide the eye


def test_lines_and_letters_of_drawings_stand_out_in_grey() -> None:
    assert all(contrast(COLOURS[name], "#FFFFFF") >= 4.5 for name in TEXT_COLOURS)
    assert all(contrast(code, "#FFFFFF") >= 2.9 for code in COLOURS.values())


def test_the_accent_is_only_for_what_has_a_sign() -> None:
    users = {each.strip() for each, body in re.findall(r"([^{}]+)\{([^{}]*)\}", CSS) if "var(--warn)" in body}
    assert users == {".caution", ".caution h2", ".loud", ".change", ".key", ":focus-visible"}
    row = Row((Cell("D03"), Cell("9", mark="FAIL"), Cell("12 V", strong=True, mark="tape over")))
    calm = Row((Cell("D04"), Cell("9", mark="assumed"), Cell("9", strong=True, mark="at least")))
    page = html.render(document(CAUTION, Table("t", "T", COLUMNS, (row, calm))))
    assert re.search(r"<h2><svg.*?</svg>Caution", page)
    assert re.search(r'\.loud::before \{ content: "▲ "', page)
    assert re.findall(r'class="mark loud">([^<]+)<', page) == ["FAIL", "tape over"]
    assert re.findall(r'class="mark">([^<]+)<', page) == ["assumed", "at least"]


def form(shapes: tuple[Shape, ...]) -> tuple[object, ...]:
    """What a grey copy shows of a sign: kind, pattern, fill and size of its shapes, without colour and width of line."""
    return tuple(
        (type(shape).__name__, shape.pattern, getattr(shape, "fill", ""), *size(shape))
        for shape in shapes
        if isinstance(shape, (Line, Box, Circle))
    )


def size(shape: Record) -> tuple[float, ...]:
    return tuple(getattr(shape, name) for name in ("width", "height", "radius") if hasattr(shape, name))


@pytest.mark.parametrize("signs", [SIGNS, CHANGES], ids=["deck", "overlay"])
def test_no_two_signs_share_a_form(signs: dict[str, tuple[Shape, ...]]) -> None:
    forms = [form(shapes) for shapes in signs.values()]
    assert all(forms)
    assert len(set(forms)) == len(forms)


def test_no_two_curves_of_a_plot_and_no_two_patterns_are_alike() -> None:
    assert len({pattern for _, pattern, _ in CURVES}) == len(CURVES)
    assert len(set(PATTERNS.values())) == len(PATTERNS)
