"""Two points and a length -> a dimension line with its arrows, extension lines and figure (ISO 129-1, from memory)."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import HAIR, LETTERS, Label, Line, Shape

_BEYOND, _GAP = 1.2, 0.8  # an extension line runs on past the dimension line, and starts off the edge


def upright_dimension(y1: float, y2: float, edge: float, x: float, text: str) -> tuple[Shape, ...]:
    """Between two heights, drawn at abscissa `x`, with extension lines from `edge`; the text is turned to read from the right."""
    low, high = min(y1, y2), max(y1, y2)
    narrow = high - low < text_width(text, LETTERS) + 1
    label = Label(x - 0.7, (low + high) / 2, text, anchor="middle", rotation=-90)
    if narrow:
        label = Label(x + 1.0, (low + high) / 2, text, level="middle")
    outwards = 1 if x >= edge else -1
    lines = (Line(edge + _GAP * outwards, at, x + _BEYOND * outwards, at, "grey", width_mm=HAIR) for at in (low, high))
    return (*lines, Line(x, low, x, high, width_mm=HAIR, arrow="both" if high - low > 6 else ""), label)
