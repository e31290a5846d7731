"""A deck on paper -> its frame: zones along two edges, running dimensions along the other two from the datum, the front edge by its name.

Running dimensions count from one datum, here the front left corner (ISO 129-1, from memory).
"""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.deck.zones import COLUMNS, ROWS
from rigc.diagnostics.figures import nearest_tenth
from rigc.reports.drawings.deck.deck_ground import ZONES
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.shapes import HAIR, LETTERS, Circle, Label, Line, Polyline, Shape

FRONT = "front edge (player)"

DATUM = {"datum": "datum, 0, 0"}
"""Its words in a legend."""

Beyond = tuple[float, float]
"""How far outside the deck the frame begins, in x and in y, in mm on paper: the outline of its case lies between."""

NOTHING: Beyond = (0.0, 0.0)

_APART = LETTERS + 0.7
_OUT, _BEND = 1.2, 3.4  # where an extension line starts and where it has reached its figure


def zones(view: View, beyond: Beyond = NOTHING) -> tuple[Shape, ...]:
    """Numbers along the upper edge, letters along the right one, with ticks between."""
    aside, along = beyond
    top, right = view.top - along, view.right + aside
    wide, high = (view.right - view.left) / len(COLUMNS), (view.bottom - view.top) / len(ROWS)
    shapes: list[Shape] = []
    for at, name in enumerate(COLUMNS):
        if wide < ZONES:
            break
        shapes.append(Label(view.left + wide * (at + 0.5), top - 0.9, name, anchor="middle"))
        if at:
            x = view.left + wide * at
            shapes.append(Line(x, top - 0.6, x, top - ZONES + 0.6, width_mm=HAIR))
    for at, name in enumerate(ROWS[::-1] if view.below else ROWS):
        if high < ZONES:
            break
        shapes.append(Label(right + 2.4, view.top + high * (at + 0.5), name, anchor="middle", level="middle"))
        if at:
            y = view.top + high * at
            shapes.append(Line(right + 0.6, y, right + ZONES - 0.6, y, width_mm=HAIR))
    return tuple(shapes)


def running(view: View, xs: Iterable[float], ys: Iterable[float], beyond: Beyond = NOTHING) -> tuple[Shape, ...]:
    """Figures in mm from the datum: across under the deck, along left of it. Each reads at the end of its line."""
    return (*_datum(view), *_across(view, xs, beyond[1]), *_along(view, ys, beyond[0]))


def front_edge(view: View, beyond: Beyond = NOTHING) -> Label:
    """The name of the edge at which the player stands, right of the figures along it."""
    y = view.top - beyond[1] - 1.2 if view.below else view.bottom + beyond[1] + 1.2
    return Label(view.right + beyond[0] + 5.2, y, FRONT, strong=True, level="baseline" if view.below else "top")


def _datum(view: View) -> tuple[Shape, ...]:
    x, y = view.point(0, 0)
    return (Circle(x, y, 0.9), Line(x - 1.8, y, x + 1.8, y, width_mm=HAIR), Line(x, y - 1.8, x, y + 1.8, width_mm=HAIR))


def _across(view: View, xs: Iterable[float], along: float) -> list[Shape]:
    values = _told((x for x in xs if 0 <= x <= view.width_mm), view.width_mm, view.right - view.left)
    wishes = tuple(view.point(x, 0)[0] for x in values)
    edge = view.bottom + along
    shapes: list[Shape] = []
    for value, wish, at in zip(values, wishes, spread(wishes, _APART, view.left - 4, view.right + 4), strict=True):
        start = edge + _OUT if value or view.below else edge + 2.2
        shapes.append(Polyline(((wish, start), (wish, edge + 2.2), (at, edge + _BEND + 1)), width_mm=HAIR))
        text = nearest_tenth(value)
        shapes.append(Label(at, edge + _BEND + 1.6, text, anchor="end", level="middle", rotation=-90))
    return shapes


def _told(values: Iterable[float], whole_mm: float, room: float) -> list[float]:
    """The values and both ends; where there is no room for all, those that stand well apart: all are in the tables."""
    every = sorted({0.0, whole_mm, *values})
    if (len(every) - 1) * _APART <= room:
        return every
    kept = [0.0]
    for value in every:
        if (value - kept[-1]) / whole_mm * room >= _APART and (whole_mm - value) / whole_mm * room >= _APART:
            kept.append(value)
    return [*kept, whole_mm]


def _along(view: View, ys: Iterable[float], aside: float) -> list[Shape]:
    values = _told((y for y in ys if 0 <= y <= view.depth_mm), view.depth_mm, view.bottom - view.top)
    wishes = tuple(view.point(0, y)[1] for y in values)
    edge = view.left - aside
    shapes: list[Shape] = []
    for value, wish, at in zip(values, wishes, spread(wishes, _APART, view.top - 2, view.bottom + 2), strict=True):
        start = edge - _OUT if value else edge - 2.2
        shapes.append(Polyline(((start, wish), (edge - 2.2, wish), (edge - _BEND, at)), width_mm=HAIR))
        shapes.append(Label(edge - _BEND - 0.6, at, nearest_tenth(value), anchor="end", level="middle"))
    return shapes
