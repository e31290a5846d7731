"""A shape -> its SVG elements, in millimetres, all of its looks in attributes: no style sheet of a page can change them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from rigc.output.escapes import xml
from rigc.reports.drawings.means.hatching import hatching, round_outline
from rigc.reports.drawings.means.lettering import EM_PER_CAPITAL
from rigc.reports.drawings.means.segments import towards
from rigc.reports.drawings.shapes import (
    COLOURS,
    HAIR,
    PATTERNS,
    THIN,
    Box,
    Circle,
    Label,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Symbol,
)

ARROW_MM = 2.4

_RISE = {"baseline": 0.0, "middle": 0.5, "top": 1.0}  # of a capital's height; renderers differ on `dominant-baseline`


def element(shape: Shape) -> str:
    """The SVG of one shape; its colour, pattern, fill and level must be those of the vocabulary (`KeyError`)."""
    return _DRAWN[type(shape).__name__](shape)


def number(value: float) -> str:
    """A length in mm to a hundredth, without idle noughts."""
    return f"{round(value, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def tint(colour: str) -> str:
    """A pale shade of a colour: a ground that letters stay legible on, and a photocopier leaves white."""
    code = COLOURS[colour]
    parts = (int(code[at : at + 2], 16) for at in (1, 3, 5))
    return "#" + "".join(f"{round(255 - (255 - part) * 0.12):02X}" for part in parts)


def _line(line: Line) -> str:
    return _open(((line.x1, line.y1), (line.x2, line.y2)), line)


def _polyline(line: Polyline) -> str:
    return _open(line.points, line)


def _open(points: tuple[Point, ...], line: Line | Polyline) -> str:
    heads = "".join(
        f'<path d="{_path(_arrow(tip, neck, line.width_mm))}Z" fill="{COLOURS[line.colour]}"/>'
        for tip, neck in _tips(points, line.arrow)
    )
    return f'<path d="{_path(_blunted(points, line))}" fill="none"{_stroke(line)}/>{heads}'


def _blunted(points: tuple[Point, ...], line: Line | Polyline) -> tuple[Point, ...]:
    """The line ends within its arrow heads, so that their tips stay sharp."""
    if line.arrow:
        points = (*points[:-1], towards(points[-1], points[-2], _head(line.width_mm) / 2))
    if line.arrow == "both":
        points = (towards(points[0], points[1], _head(line.width_mm) / 2), *points[1:])
    return points


def _tips(points: tuple[Point, ...], arrow: str) -> list[tuple[Point, Point]]:
    ends = {"": [], "end": [(points[-1], points[-2])], "both": [(points[-1], points[-2]), (points[0], points[1])]}
    return ends[arrow]


def _arrow(tip: Point, neck: Point, width: float) -> tuple[Point, ...]:
    """A slender head, three times as long as wide."""
    x, y = towards(tip, neck, _head(width))
    across, down = (x - tip[0]) / 6, (y - tip[1]) / 6
    return (tip, (x + down, y - across), (x - down, y + across))


def _head(width: float) -> float:
    return ARROW_MM if width <= THIN else ARROW_MM * 1.25


def _box(box: Box) -> str:
    right, bottom = box.x + box.width, box.y + box.height
    corners = ((box.x, box.y), (right, box.y), (right, bottom), (box.x, bottom))
    round_ = f' rx="{number(box.corner_mm)}"' if box.corner_mm else ""
    placed = f'x="{number(box.x)}" y="{number(box.y)}" width="{number(box.width)}" height="{number(box.height)}"'
    return _closed(f"<rect {placed}{round_}", box, corners)


def _circle(circle: Circle) -> str:
    placed = f'cx="{number(circle.x)}" cy="{number(circle.y)}" r="{number(circle.radius)}"'
    return _closed(f"<circle {placed}", circle, round_outline(circle.x, circle.y, circle.radius))


def _polygon(polygon: Polygon) -> str:
    return _closed(f'<path d="{_path(polygon.points)}Z"', polygon, polygon.points)


def _closed(start: str, shape: Box | Circle | Polygon, outline: tuple[Point, ...]) -> str:
    """The outline last, over its own hatching."""
    grounds = {"": "none", "white": "#FFFFFF", "tint": tint(shape.colour), "solid": COLOURS[shape.colour]}
    if shape.fill in grounds:
        return f'{start} fill="{grounds[shape.fill]}"{_stroke(shape)}/>'
    strokes = {"hatch": (False,), "cross-hatch": (False, True)}[shape.fill]
    lines = "".join(_path(segment) for falling in strokes for segment in hatching(outline, falling))
    drawn = (
        f'<path d="{lines}" fill="none" stroke="{COLOURS[shape.colour]}" stroke-width="{number(HAIR)}"/>'
        if lines
        else ""
    )
    return f'{drawn}{start} fill="none"{_stroke(shape)}/>'


def _label(label: Label) -> str:
    y = label.y + label.size_mm * _RISE[label.level]
    turn = (
        f' transform="rotate({number(label.rotation)} {number(label.x)} {number(label.y)})"' if label.rotation else ""
    )
    anchor = f' text-anchor="{label.anchor}"' if label.anchor != "start" else ""
    weight = ' font-weight="700"' if label.strong else ""
    halo = ' stroke="#FFFFFF" stroke-width="1.2" stroke-linejoin="round" paint-order="stroke"' if label.halo else ""
    size = number(label.size_mm * EM_PER_CAPITAL)
    placed = f'x="{number(label.x)}" y="{number(y)}" font-size="{size}" fill="{COLOURS[label.colour]}"'
    return f"<text {placed}{anchor}{weight}{halo}{turn}>{xml(label.text)}</text>"


def _symbol(symbol: Symbol) -> str:
    turn = f" rotate({number(symbol.rotation)})" if symbol.rotation else ""
    inner = "".join(element(shape) for shape in symbol.shapes)
    title = f"<title>{xml(symbol.name)}</title>" if symbol.name else ""
    return f'<g transform="translate({number(symbol.x)} {number(symbol.y)}){turn}">{title}{inner}</g>'


def _stroke(shape: Line | Polyline | Box | Circle | Polygon) -> str:
    lengths = PATTERNS[shape.pattern]
    wider = 1.0 if shape.width_mm <= THIN else 1.5
    dashes = f' stroke-dasharray="{" ".join(number(length * wider) for length in lengths)}"' if lengths else ""
    return f' stroke="{COLOURS[shape.colour]}" stroke-width="{number(shape.width_mm)}"{dashes}'


def _path(points: tuple[Point, ...]) -> str:
    first, *rest = (f"{number(x)} {number(y)}" for x, y in points)
    return f"M{first}" + "".join(f"L{point}" for point in rest)


_DRAWN: dict[str, Callable[[Any], str]] = {
    "Line": _line,
    "Polyline": _polyline,
    "Box": _box,
    "Circle": _circle,
    "Polygon": _polygon,
    "Label": _label,
    "Symbol": _symbol,
}
