"""Signs and what they stand for -> the legend under a drawing, in rows as wide as the drawing."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.lead_make import SIGNS as LEAD_SIGNS
from rigc.reports.drawings.deck.open_jacks import open_sign
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, Box, Circle, Label, Line, Shape, Symbol

ROW = 4.6
_SIGN, _GAP = 10.0, 4.0

SIGNS: dict[str, tuple[Shape, ...]] = {
    "datum": (Circle(5, 0, 0.9), Line(3.2, 0, 6.8, 0, width_mm=HAIR), Line(5, -1.8, 5, 1.8, width_mm=HAIR)),
    "plug": (Box(2, -1.4, 6, 2.8, fill="hatch"),),
    "room to bend": (Box(2, -1.4, 6, 2.8, pattern="dotted"),),
    "open jack": (open_sign(5, 0),),
    "foot switch": (Circle(5, 0, 1.2, fill="solid", width_mm=HAIR),),
    "knob": (Circle(5, 0, 1.0),),
    "drop line": (Line(0, 0, 10, 0, "grey", "spaced"),),
    "panel jack": (Circle(5, 0, 1.4, fill="white"), Circle(5, 0, 0.6, fill="solid")),
    "mains inlet": (Box(3.4, -1.2, 3.2, 2.4, fill="solid"),),
    "hole": (Circle(5, 0, 1.2), Line(3, 0, 7, 0, width_mm=HAIR), Line(5, -1.7, 5, 1.7, width_mm=HAIR)),
    "panel hole": (
        Circle(5, 0, 1.4),
        Circle(5, 0, 0.7),
        Line(3, 0, 7, 0, width_mm=HAIR),
        Line(5, -1.7, 5, 1.7, width_mm=HAIR),
    ),
    "foot": (Box(3.8, -1.2, 2.4, 2.4), Line(3, 0, 7, 0, width_mm=HAIR), Line(5, -1.7, 5, 1.7, width_mm=HAIR)),
    "strip": (Box(2, -1.2, 6, 2.4, "grey", width_mm=HAIR, fill="tint"),),
    "leads": (Line(0, 0, 10, 0, width_mm=THICK),),
    "covered": (Line(0, 0, 10, 0, pattern="dashed"),),
    "bundle": (
        Line(0, 0, 7, 0, width_mm=THICK),
        Line(2.6, 1.4, 4.4, -1.4),
        Label(8, 0, "3", level="middle"),
    ),
    "keep out": (Box(1, -1.5, 8, 3, pattern="dashed", fill="cross-hatch"),),
    "reserved": (Box(1, -1.5, 8, 3, pattern="dashed", fill="hatch"),),
    "inside of the case": (Box(1, -1.5, 8, 3, pattern="dash-dot"),),
    "reach of a foot": (Line(0, 0, 10, 0, "blue", "long-short"),),
    "below the deck": (Box(1, -1.5, 8, 3, width_mm=THICK, fill="white"),),
    "through the deck": (Circle(5, 0, 0.65, fill="white"),),
}
"""Each sign within 10 mm by 3 mm, its middle line at 0."""

_MARKS = {f"{sign} {words}": sign for sign, words in LEAD_SIGNS.values()}


def legend(
    words: dict[str, str], left: float, right: float, top: float, signs: dict[str, tuple[Shape, ...]] = SIGNS
) -> tuple[Shape, ...]:
    """The signs of these keys with their words, from the upper left corner on."""
    shapes: list[Shape] = []
    for key, x, y in _spots(words, left, right, top):
        if key in _MARKS:
            shapes.append(Label(x + _SIGN / 2, y, _MARKS[key], anchor="middle", level="middle", strong=True))
        else:
            shapes.append(Symbol("", signs[key], x, y))
        shapes.append(Label(x + _SIGN + 1.5, y, words[key], level="middle"))
    return tuple(shapes)


def legend_foot(words: dict[str, str], left: float, right: float, top: float) -> float:
    """Where the last row of a legend ends."""
    return max((y for _, _, y in _spots(words, left, right, top)), default=top) + ROW / 2


def _spots(words: dict[str, str], left: float, right: float, top: float) -> Iterator[tuple[str, float, float]]:
    x, y = left, top + ROW / 2
    for key, text in words.items():
        wide = _SIGN + 1.5 + text_width(text, LETTERS) + _GAP
        if x > left and x + wide - _GAP > right:
            x, y = left, y + ROW
        yield key, x, y
        x += wide
