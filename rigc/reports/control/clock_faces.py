"""Knob settings of a song -> a drawing of clock faces, each with its pointer at the stated hour."""

from __future__ import annotations

from math import cos, pi, sin

from rigc.model.wishes import Song
from rigc.reports.content import Drawing
from rigc.reports.drawings.shapes import THICK, Circle, Label, Line, Polygon, Shape

_RADIUS, _TICK, _DOWN, _HAND = 9.0, 2.0, 32.0, 0.9
_ROW_MM = 180.0  # what an upright page takes
_LETTER_MM = 2.0  # width to allow for a letter
_ENDS = (7, 5)  # where the travel of a knob begins and ends


def clock_faces(song: Song, number: int) -> Drawing:
    """All knobs of a song in rows; `number` tells its drawing from those of other songs."""
    texts = [(unit, knob, f"{hour} o'clock") for unit, knob, hour in song.settings]
    across = max(30.0, *(_LETTER_MM * len(text) + 4 for three in texts for text in three))
    columns = min(len(texts), max(1, int(_ROW_MM // across)))
    shapes: list[Shape] = []
    for at, (unit, knob, hour) in enumerate(song.settings):
        row, column = divmod(at, columns)
        shapes += _face((column + 0.5) * across, row * _DOWN + _RADIUS + _TICK + 1, unit, knob, hour)
    told = "; ".join(f"{unit} {knob} at {hour}" for unit, knob, hour in texts)
    title = f"Knobs: {song.title}"
    rows = -(-len(texts) // columns)
    return Drawing(f"knobs_{number}", title, f"Clock faces: {told}.", columns * across, rows * _DOWN + 4, tuple(shapes))


def _face(x: float, y: float, unit: str, knob: str, hour: int) -> list[Shape]:
    tip, (start, end) = _at(x, y, hour, _RADIUS - 1), _ENDS
    shapes: list[Shape] = [Circle(x, y, _RADIUS, width_mm=THICK), Circle(x, y, 0.8, fill="solid")]
    for tick in (start, end):
        shapes.append(Line(*_at(x, y, tick, _RADIUS), *_at(x, y, tick, _RADIUS + _TICK)))
    aside, down = cos(hour * pi / 6) * _HAND, sin(hour * pi / 6) * _HAND
    shapes.append(Polygon(((x - aside, y - down), tip, (x + aside, y + down)), fill="solid"))
    words = (f"{hour} o'clock", unit, knob)
    shapes += [
        Label(x, y + _RADIUS + 5.5 + 4 * line, text, anchor="middle", strong=line == 0)
        for line, text in enumerate(words)
    ]
    return shapes


def _at(x: float, y: float, hour: int, radius: float) -> tuple[float, float]:
    angle = hour * pi / 6
    return round(x + radius * sin(angle), 3), round(y - radius * cos(angle), 3)
