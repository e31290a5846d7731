"""The vocabulary of a drawing: frozen shapes in millimetres on paper, x to the right, y downwards.

A line says what it is by its pattern and by a word beside it; colour only repeats that, so that a black-and-white
copy loses nothing. `colour` is a key of `COLOURS`, `pattern` of `PATTERNS`, `fill` one of `FILLS`.
"""

from __future__ import annotations

from rigc.record import Record

# The colours of Okabe and Ito (2002/2008), which the colour-blind tell apart, but for those too pale for a line on
# white paper (under 3:1); `grey` is for grids and construction lines.
COLOURS = {
    "black": "#000000",
    "blue": "#0072B2",
    "vermillion": "#D55E00",
    "green": "#009E73",
    "purple": "#CC79A7",
    "grey": "#767676",
}
TEXT_COLOURS = ("black", "blue", "grey")
"""Those dark enough for letters: at least 4.5:1 on white."""

PATTERNS = {
    "solid": (),
    "dashed": (2.4, 1.2),
    "dotted": (0.5, 0.75),
    "dash-dot": (3.6, 0.9, 0.5, 0.9),
    "dash-dot-dot": (3.6, 0.9, 0.5, 0.9, 0.5, 0.9),
    "dash-dash-dot": (2.4, 0.9, 2.4, 0.9, 0.5, 0.9),
    "long-dash": (6.0, 1.2),
    "long-short": (6.0, 1.0, 1.5, 1.0),
    "spaced": (2.4, 3.6),
}
"""The kinds of line of ISO 128-2 (from memory), as many as one drawing has classes. Lengths of stroke and gap in mm for a thin line; a thick one has them half as long again."""

FILLS = ("", "white", "tint", "hatch", "cross-hatch", "solid")
ANCHORS = ("start", "middle", "end")
LEVELS = ("baseline", "middle", "top")
ARROWS = ("", "end", "both")

HAIR, THIN, THICK = 0.13, 0.25, 0.5
"""Widths of line in mm: for grids and leaders, for outlines, for what a drawing is about (ISO 128, from memory)."""

LETTERS, MIDDLE_LETTERS, LARGE_LETTERS = 2.5, 3.5, 5.0
"""The three heights of a capital letter on paper, in mm (ISO 3098, from memory)."""
SMALL_LETTERS = 1.8
"""The least height of that standard: of a name that finds no room otherwise."""

Point = tuple[float, float]


class Line(Record):
    """A straight line; `arrow` is none, at the `end`, or at `both`."""

    x1: float
    y1: float
    x2: float
    y2: float
    colour: str = "black"
    pattern: str = "solid"
    width_mm: float = THIN
    arrow: str = ""


class Polyline(Record):
    """An open line through points."""

    points: tuple[Point, ...]
    colour: str = "black"
    pattern: str = "solid"
    width_mm: float = THIN
    arrow: str = ""


class Box(Record):
    """An upright rectangle: its upper left corner, width and height; `corner_mm` rounds its corners."""

    x: float
    y: float
    width: float
    height: float
    colour: str = "black"
    pattern: str = "solid"
    width_mm: float = THIN
    fill: str = ""
    corner_mm: float = 0.0


class Circle(Record):
    """A circle about its centre."""

    x: float
    y: float
    radius: float
    colour: str = "black"
    pattern: str = "solid"
    width_mm: float = THIN
    fill: str = ""


class Polygon(Record):
    """A closed line through points."""

    points: tuple[Point, ...]
    colour: str = "black"
    pattern: str = "solid"
    width_mm: float = THIN
    fill: str = ""


class Label(Record):
    """One line of text. `size_mm` is the height of a capital; `level` says what of it stands at `y`.

    `rotation` turns it about (x, y), in degrees clockwise; `halo` clears a white edge around its letters.
    """

    x: float
    y: float
    text: str
    size_mm: float = LETTERS
    anchor: str = "start"
    level: str = "baseline"
    rotation: float = 0.0
    colour: str = "black"
    strong: bool = False
    halo: bool = False


class Symbol(Record):
    """Shapes drawn about (0, 0) and put at (x, y), turned by `rotation` degrees clockwise; `name` says what it stands for."""

    name: str
    shapes: tuple[Shape, ...]
    x: float = 0.0
    y: float = 0.0
    rotation: float = 0.0


Shape = Line | Polyline | Box | Circle | Polygon | Label | Symbol
