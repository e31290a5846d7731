"""Electrical symbols -> shapes of our own: the fonts of most machines lack these signs.

Each is drawn about its middle, inside a square of `size` mm. Numbers are those of IEC 60417, shapes from memory.
"""

from __future__ import annotations

from rigc.reports.drawings.shapes import THICK, THIN, Box, Line, Shape, Symbol

SIZE = 5.0


def earth(x: float, y: float, size: float = SIZE) -> Symbol:
    """Earth (5017): a stem down to three bars, each shorter than the last."""
    return Symbol("earth", _bars(size), x, y)


def class_ii(x: float, y: float, size: float = SIZE) -> Symbol:
    """Class II equipment (5172): a square in a square, for double or reinforced insulation."""
    return Symbol("class II equipment", (_square(size), _square(size * 0.55)), x, y)


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
