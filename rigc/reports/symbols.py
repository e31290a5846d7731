"""Electrical symbols -> shapes of our own: the fonts of most machines lack these signs.

Each is drawn about its middle, inside a square of `size` mm. Numbers are those of IEC 60417, shapes from memory.
"""

from __future__ import annotations

from math import pi, sin

from rigc.reports.drawings.shapes import THICK, THIN, Box, Circle, Line, Polyline, Shape, Symbol

SIZE = 5.0


def earth(x: float, y: float, size: float = SIZE) -> Symbol:
    """Earth (5017): a stem down to three bars, each shorter than the last."""
    return Symbol("earth", _bars(size), x, y)


def protective_earth(x: float, y: float, size: float = SIZE) -> Symbol:
    """Protective earth (5019): the earth symbol in a circle."""
    return Symbol("protective earth", (Circle(0, 0, size / 2), *_bars(size * 0.68)), x, y)


def class_ii(x: float, y: float, size: float = SIZE) -> Symbol:
    """Class II equipment (5172): a square in a square, for double or reinforced insulation."""
    return Symbol("class II equipment", (_square(size), _square(size * 0.55)), x, y)


def direct_current(x: float, y: float, size: float = SIZE) -> Symbol:
    """Direct current (5031): a whole line over a broken one."""
    half, gap, dash = size / 2, size * 0.11, size / 5
    broken = tuple(Line(start, gap, start + dash, gap, width_mm=THICK) for start in (-half, -dash / 2, half - dash))
    return Symbol("direct current", (Line(-half, -gap, half, -gap, width_mm=THICK), *broken), x, y)


def alternating_current(x: float, y: float, size: float = SIZE) -> Symbol:
    """Alternating current (5032): one wave, up first."""
    steps = 24
    wave = tuple((size * (at / steps - 0.5), -size * 0.2 * sin(2 * pi * at / steps)) for at in range(steps + 1))
    return Symbol("alternating current", (Polyline(wave, width_mm=THICK),), x, y)


def _bars(size: float) -> tuple[Shape, ...]:
    top, step = size * 0.05, size * 0.19
    stem = Line(0, -size / 2, 0, top, width_mm=THICK if size >= SIZE else THIN)
    bars = tuple(
        Line(-size * half, top + step * at, size * half, top + step * at, width_mm=stem.width_mm)
        for at, half in enumerate((0.45, 0.28, 0.11))
    )
    return (stem, *bars)


def _square(side: float) -> Box:
    return Box(-side / 2, -side / 2, side, side, width_mm=THICK)
