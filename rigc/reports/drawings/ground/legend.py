"""How to read the ground drawing."""

from __future__ import annotations

from collections.abc import Collection

from rigc.reports.drawings.shapes import THICK, Box, Circle, Label, Line, Polyline, Shape, Symbol
from rigc.reports.symbols import class_ii, earth

_ROW, _LINE = 6.0, 14.0
_TEXT = (17.0, 9.0)  # from a sign to its words, in either column


def legend(drawn: Collection[Shape], x: float, y: float) -> list[Shape]:
    """Of the signs that are drawn, in two columns, with their words, from the upper left corner (x, y) on; 18 mm high at most."""
    there = {sign for shape in drawn if (sign := _sign(shape))}
    shapes: list[Shape] = []
    for column, left in ((_LINES, x), (_MARKS, x + 96)):
        found = [sign for sign in column if sign in there]
        for row, sign in enumerate(found):
            middle = y + 3 + _ROW * row
            shapes += [
                *_shapes(sign, left, middle),
                Label(left + _TEXT[column is _MARKS], middle, sign, level="middle"),
            ]
    return shapes


def _sign(shape: Shape) -> str:
    """Of which sign a shape is; empty for what needs no words."""
    if isinstance(shape, Symbol):
        return {earth(0, 0).name: _EARTH, class_ii(0, 0).name: _CLASS_II}.get(shape.name, "")
    if isinstance(shape, Box):
        return _DASHED if shape.pattern == "dashed" else ""
    if isinstance(shape, Circle):
        return _APART
    if isinstance(shape, Polyline) and shape.pattern == "dash-dot":
        return _RING
    return _PAIR if isinstance(shape, Line) and shape.y1 > shape.y2 else ""  # a stroke rises


def _shapes(sign: str, x: float, y: float) -> list[Shape]:
    if sign == _PAIR:
        return [Line(x, y, x + _LINE, y), *strokes(2, x + _LINE / 2, y)]
    if sign == _APART:
        end = Circle(x + _LINE - 1, y, 1.0, fill="white", width_mm=THICK)
        return [Line(x, y, x + _LINE - 2, y, pattern="dashed"), end]
    if sign == _RING:
        return [Line(x, y, x + _LINE, y, colour="vermillion", pattern="dash-dot", width_mm=THICK)]
    if sign == _EARTH:
        return [earth(x + 3, y)]
    return [class_ii(x + 3, y, 4.0) if sign == _CLASS_II else Box(x, y - 1.5, 6, 3, pattern="dashed", fill="white")]


_PAIR, _APART, _RING = "two leads side by side: a silent pair", "kept apart: the ground ends", "closes a ring"
_EARTH, _CLASS_II = "mains earth", "double-insulated: no earth"
_DASHED = "a common, a panel, or drawn again"
_LINES, _MARKS = (_PAIR, _APART, _RING), (_EARTH, _CLASS_II, _DASHED)


def strokes(count: int, x: float, y: float) -> list[Shape]:
    """Short oblique strokes across a line at (x, y), one for each lead of several side by side; none for a single lead."""
    if count < 2:
        return []
    first = x - 0.6 * (count - 1)
    return [
        Line(first + 1.2 * at - 0.9, y + 1.1, first + 1.2 * at + 0.9, y - 1.1, width_mm=THICK) for at in range(count)
    ]
