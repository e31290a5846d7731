"""How to read the ground drawing."""

from __future__ import annotations

from rigc.reports.drawings.shapes import THICK, Circle, Label, Line, Shape
from rigc.reports.symbols import class_ii, earth

_ROW, _LINE, _TEXT = 6.0, 14.0, 17.0


def legend(x: float, y: float) -> list[Shape]:
    """Two columns of signs with their words, from the upper left corner (x, y) on; 18 mm high."""
    right = x + 96
    rows = [y + 3 + _ROW * row for row in range(3)]
    return [
        Line(x, rows[0], x + _LINE, rows[0]),
        *strokes(2, x + _LINE / 2, rows[0]),
        Label(x + _TEXT, rows[0], "two leads side by side: a silent pair", level="middle"),
        Line(x, rows[1], x + _LINE - 2, rows[1], pattern="dashed"),
        Circle(x + _LINE - 1, rows[1], 1.0, fill="white", width_mm=THICK),
        Label(x + _TEXT, rows[1], "kept apart: the ground ends", level="middle"),
        Line(x, rows[2], x + _LINE, rows[2], colour="vermillion", pattern="dash-dot", width_mm=THICK),
        Label(x + _TEXT, rows[2], "closes a ring", level="middle"),
        earth(right + 3, rows[0]),
        Label(right + 9, rows[0], "mains earth of an amp or desk", level="middle"),
        class_ii(right + 3, rows[1], 4.0),
        Label(right + 9, rows[1], "double-insulated: no earth", level="middle"),
    ]


def strokes(count: int, x: float, y: float) -> list[Shape]:
    """Short oblique strokes across a line at (x, y), one for each lead of several side by side; none for a single lead."""
    if count < 2:
        return []
    first = x - 0.6 * (count - 1)
    return [
        Line(first + 1.2 * at - 0.9, y + 1.1, first + 1.2 * at + 0.9, y - 1.1, width_mm=THICK) for at in range(count)
    ]
