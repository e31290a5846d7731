"""Rows of the power one-line -> shapes: outlets at the left, leads with their numbers, units at the right."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Label, Line, Polyline, Shape
from rigc.reports.power.outlet_rows import OutletRow

ROW = 7.5
_BOX, _OUTLET = 6.0, 12.0
_AFTER = 1.5  # between a box and its text
_UNITS = 46.0  # what a unit's box may take of the width
BESIDE = 70.0
"""What the words beside a unit may take beyond the width, in mm."""


def outlet_shapes(rows: tuple[OutletRow, ...], x: float, y: float, width: float) -> list[Shape]:
    """The rows from (x, y) down to the right edge at `width`; beyond it stands what is to be said beside a unit."""
    shapes: list[Shape] = []
    first = 0.0
    for at, row in enumerate(rows):
        middle = y + ROW * at + ROW / 2
        if row.outlet:
            first = middle
            shapes += _outlet(row, x, middle)
        again = at > 0 and row.used and row.also != "" and rows[at - 1].end == row.end
        shapes += (_joining if again else _lead)(row, x + _OUTLET, middle, first, width)
    return [*shapes, *_commons(rows, x, y)]


def _outlet(row: OutletRow, x: float, middle: float) -> list[Shape]:
    return [
        Box(x, middle - _BOX / 2, _OUTLET, _BOX),
        Label(x + _OUTLET / 2, middle, row.outlet, anchor="middle", level="middle"),
        Label(x + _OUTLET + 3.5, middle - 1, f"{row.setting}, {row.load}"),
    ]


def _lead(row: OutletRow, x: float, middle: float, first: float, width: float) -> list[Shape]:
    """The lead from the outlet's edge to the unit's box, or a stub where nothing is plugged in."""
    end = width - 1 - _UNITS
    if not row.used:
        return [
            Line(x, middle, end, middle, pattern="dotted"),
            Label(end + _AFTER, middle, row.end, level="middle"),
        ]
    pattern = "dashed" if row.ac else "solid"
    branch = x + 1.8
    points = ((x, middle), (end, middle)) if first == middle else ((branch, first), (branch, middle), (end, middle))
    box = max(16.0, text_width(row.end, LETTERS) + 4)
    beside = [Label(width + _AFTER, middle, row.also, level="middle")] if row.also else []
    return [
        Polyline(points, pattern=pattern, width_mm=THICK),
        Label(end - 2, middle - 1, row.mark, anchor="end", strong=True),
        *beside,
        Box(end, middle - _BOX / 2, min(box, _UNITS), _BOX, corner_mm=1),
        Label(end + 2, middle, row.end, level="middle"),
    ]


def _joining(row: OutletRow, x: float, middle: float, first: float, width: float) -> list[Shape]:
    """A further lead to the unit whose box stands in the row above."""
    end = width - 1 - _UNITS
    return [
        shape if isinstance(shape, Label) else _up(shape, end, middle)
        for shape in _lead(row, x, middle, first, width)
        if not isinstance(shape, Box) and not (isinstance(shape, Label) and shape.text == row.end)
    ]


def _up(shape: Shape, end: float, middle: float) -> Shape:
    if not isinstance(shape, Polyline):
        return shape
    turn = end + 5
    way: Polyline = shape.replace(points=(*shape.points[:-1], (turn, middle), (turn, middle - ROW + _BOX / 2)))
    return way


def _commons(rows: tuple[OutletRow, ...], x: float, y: float) -> list[Shape]:
    """A bar for each common, along its outlets' left edges."""
    shapes: list[Shape] = []
    for common in dict.fromkeys(row.common for row in rows if row.common):
        at = [number for number, row in enumerate(rows) if row.common == common and row.outlet]
        if len(at) > 1:
            top, bottom = (y + ROW * number + ROW / 2 for number in (at[0], at[-1]))
            shapes.append(Line(x - 1.5, top, x - 1.5, bottom, width_mm=1.0))
            shapes += [
                Line(x - 1.5, y + ROW * each + ROW / 2, x, y + ROW * each + ROW / 2, width_mm=1.0) for each in at
            ]
    return shapes
