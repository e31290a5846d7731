"""Two points and a length -> a dimension line with its arrows, extension lines and figure (ISO 129-1, from memory)."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import HAIR, LETTERS, Label, Line, Shape

_BEYOND, _GAP = 1.2, 0.8  # an extension line runs on past the dimension line, and starts off the edge


def level_dimension(x1: float, x2: float, edge: float, y: float, text: str) -> tuple[Shape, ...]:
    """Between two abscissas, drawn at height `y`, with extension lines from `edge`; `text` stands over the middle."""
    low, high = min(x1, x2), max(x1, x2)
    narrow = high - low < text_width(text, LETTERS) + 1
    anchor = "start" if narrow else "middle"
    at = high + 0.8 if narrow else (low + high) / 2
    return (
        *_extensions_up(low, high, edge, y),
        Line(low, y, high, y, width_mm=HAIR, arrow="both" if high - low > 6 else ""),
        Label(at, y if narrow else y - 0.7, text, anchor=anchor, level="middle" if narrow else "baseline"),
    )


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


def _extensions_up(low: float, high: float, edge: float, y: float) -> tuple[Shape, ...]:
    outwards = 1 if y >= edge else -1
    return tuple(
        Line(at, edge + _GAP * outwards, at, y + _BEYOND * outwards, "grey", width_mm=HAIR) for at in (low, high)
    )
