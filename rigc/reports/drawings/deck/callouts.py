"""Points and their names -> labels above or below a drawing, each with a leader to its point; none on another or on a leader."""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import HAIR, LETTERS, Circle, Label, Line, Point, Shape

ROW = LETTERS + 1.4
"""From row to row, in mm."""

_APART = 1.2
_BESIDE = 0.6  # from a leader to its label, which stands at its right: no leader from below meets the label


class Callout(Record):
    """A name and the point that it is for, on paper."""

    text: str
    point: Point


def callouts(wanted: tuple[Callout, ...], base: float, below: bool = False) -> tuple[Shape, ...]:
    """The labels start beside their leaders and run to the right, the nearest row at `base`; one beyond the next in the way.

    They stand above `base`, or `below` it.
    """
    shapes: list[Shape] = []
    for call, row in rows(wanted):
        x, y = call.point
        height = base + ROW * row if below else base - ROW * row
        shapes.append(Line(x, y, x, height + (LETTERS if below else -LETTERS) / 2, "grey", width_mm=HAIR))
        shapes.append(Circle(x, y, 0.4, "grey", fill="solid", width_mm=HAIR))
        shapes.append(Label(x + _BESIDE, height, call.text, level="top" if below else "baseline"))
    return tuple(shapes)


def rows(wanted: tuple[Callout, ...]) -> list[tuple[Callout, int]]:
    """Each callout with its row, the lowest 0: above all whose leaders its label would cross."""
    placed: list[tuple[Callout, int]] = []
    for call in sorted(wanted, key=lambda each: (each.point, each.text), reverse=True):
        x = call.point[0]
        end = x + _BESIDE + text_width(call.text, LETTERS) + _APART
        placed.append((call, 1 + max((row for other, row in placed if x <= other.point[0] < end), default=-1)))
    return placed


def depth(wanted: tuple[Callout, ...]) -> float:
    """What all rows take together, in mm."""
    return ROW * (1 + max((row for _, row in rows(wanted)), default=-1))
