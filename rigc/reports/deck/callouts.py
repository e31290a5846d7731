"""Points and their names -> labels above a height, each with a leader down to its point; no label on another or on a leader."""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.drawing.lettering import text_width
from rigc.reports.shapes import HAIR, LETTERS, Circle, Label, Line, Point, Shape

_ROW, _APART = LETTERS + 1.4, 1.2


class Callout(Record):
    """A name and the point that it is for, on paper."""

    text: str
    point: Point


def callouts(wanted: tuple[Callout, ...], base: float) -> tuple[Shape, ...]:
    """From left to right, each label in the lowest row above `base` where it and its leader are free."""
    placed: list[tuple[int, float, float, float]] = []  # row, left, right, leader
    shapes: list[Shape] = []
    for call in sorted(wanted, key=lambda each: (each.point, each.text)):
        x, y = call.point
        half = text_width(call.text, LETTERS) / 2 + _APART / 2
        row = 0
        while not _free(placed, row, x, half):
            row += 1
        placed.append((row, x - half, x + half, x))
        height = base - _ROW * row
        shapes += [Line(x, y, x, height + 0.7, "grey", width_mm=HAIR), Circle(x, y, 0.4, "grey", fill="solid", width_mm=HAIR)]
        shapes.append(Label(x, height, call.text, anchor="middle"))
    return tuple(shapes)


def _free(placed: list[tuple[int, float, float, float]], row: int, x: float, half: float) -> bool:
    for other, left, right, leader in placed:
        if other == row and x - half < right and left < x + half:
            return False
        if other < row and left < x < right:
            return False
        if other > row and x - half < leader < x + half:
            return False
    return True
