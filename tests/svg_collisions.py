"""An SVG of a drawing -> the letters that stand on letters, on a line or on an outline, or that something covers; read from the SVG alone.

What is painted later covers what is below it, so a line under a filled shape is no line any more.
"""

from __future__ import annotations

import re
from itertools import pairwise
from math import cos, hypot, radians, sin
from typing import NamedTuple
from xml.etree import ElementTree

from rigc.reports.drawings.means.lettering import EM_PER_CAPITAL, text_width

_SVG = "{http://www.w3.org/2000/svg}"
_SLACK = 0.05
_HANGING, _HANG = frozenset("gjpqy,;()[]{}|/"), 0.29
"""Letters that hang below their line, and by how much of a capital's height: the typeface's g by 205 of 698 units."""

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]


class Box(NamedTuple):
    """An upright rectangle in mm."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box) -> bool:
        """Whether both share more than an edge."""
        return (
            min(self.right, other.right) - max(self.left, other.left) > _SLACK
            and min(self.bottom, other.bottom) - max(self.top, other.top) > _SLACK
        )


class Text(NamedTuple):
    """Words, where their letters stand, and when they were painted."""

    words: str
    box: Box
    order: int
    middle: Point
    title: str


class Stroke(NamedTuple):
    """A straight piece of a line, with half its width."""

    start: Point
    end: Point
    half: float
    order: int


class Fill(NamedTuple):
    """A ground that covers what is below it."""

    box: Box
    order: int


class Painted(NamedTuple):
    """What an SVG paints."""

    texts: tuple[Text, ...]
    strokes: tuple[Stroke, ...]
    fills: tuple[Fill, ...]


def painted(svg: str) -> Painted:
    """All texts, strokes and fills of an SVG, in mm on its ground."""
    texts: list[Text] = []
    strokes: list[Stroke] = []
    fills: list[Fill] = []
    order = 0

    def walk(element: ElementTree.Element, matrix: Matrix, title: str) -> None:
        nonlocal order
        named = element.find(f"{_SVG}title")
        title = title if named is None or named.text is None else named.text
        for child in element:
            order += 1
            tag = child.tag.removeprefix(_SVG)
            if tag == "g":
                walk(child, _times(matrix, _transform(child.get("transform", ""))), title)
            elif tag == "text":
                texts.append(_text(child, matrix, order, title))
                if child.get("stroke", "none") != "none":  # a white edge around its letters
                    fills.append(Fill(texts[-1].box, order))
            elif tag in ("path", "rect", "circle"):
                lines = _lines(child, tag)
                moved = [[_at(matrix, point) for point in line] for line in lines]
                if child.get("stroke", "none") != "none":
                    half = float(child.get("stroke-width", "1")) / 2
                    strokes.extend(Stroke(start, end, half, order) for line in moved for start, end in pairwise(line))
                if child.get("fill", "none") != "none":
                    points = [point for line in moved for point in line]
                    fills.append(Fill(_around(points), order))

    root = ElementTree.fromstring(svg)
    walk(root, (1, 0, 0, 1, 0, 0), "")
    ground = float(root.get("viewBox", "0 0 0 0").split()[2])
    fills = [fill for fill in fills if fill.box.right - fill.box.left < ground - 0.1]
    return Painted(tuple(texts), tuple(strokes), tuple(fills))


def collisions(svg: str) -> list[str]:
    """What is wrong, in words; empty if all letters stand free."""
    drawn = painted(svg)
    found = []
    squares: dict[tuple[int, int], list[int]] = {}
    for number, stroke in enumerate(drawn.strokes):
        for square in _squares(_around([stroke.start, stroke.end]), stroke.half):
            squares.setdefault(square, []).append(number)
    for number, one in enumerate(drawn.texts):
        found += [
            f"'{one.words}' and '{other.words}'" for other in drawn.texts[number + 1 :] if one.box.meets(other.box)
        ]
        found += [
            f"'{one.words}' is covered" for fill in drawn.fills if fill.order > one.order and one.box.meets(fill.box)
        ]
        near = {number: None for square in _squares(one.box) for number in squares.get(square, ())}
        for stroke in map(drawn.strokes.__getitem__, near):
            piece = _within(stroke, one.box)
            if piece is not None and not _covered(piece, stroke, drawn.fills):
                found.append(f"'{one.words}' on a line at {piece[0]:.1f}, {piece[1]:.1f}")
    return found


def _squares(box: Box, more: float = 0.0) -> list[tuple[int, int]]:
    """Those of 10 mm that a box touches, and so much around it."""
    columns = range(int((box.left - more) // 10), int((box.right + more) // 10) + 1)
    rows = range(int((box.top - more) // 10), int((box.bottom + more) // 10) + 1)
    return [(column, row) for column in columns for row in rows]


def _covered(at: Point, stroke: Stroke, fills: tuple[Fill, ...]) -> bool:
    x, y = at
    return any(
        fill.order > stroke.order and fill.box.left < x < fill.box.right and fill.box.top < y < fill.box.bottom
        for fill in fills
    )


def _within(stroke: Stroke, box: Box) -> Point | None:
    """The middle of that part of a stroke which runs in a box; None if it keeps off."""
    wider = stroke.half - _SLACK
    around = Box(box.left - wider, box.top - wider, box.right + wider, box.bottom + wider)
    (x1, y1), (x2, y2) = stroke.start, stroke.end
    low, high = 0.0, 1.0
    for start, way, least, most in ((x1, x2 - x1, around.left, around.right), (y1, y2 - y1, around.top, around.bottom)):
        if abs(way) < 1e-9:
            if not least < start < most:
                return None
            continue
        one, other = sorted(((least - start) / way, (most - start) / way))
        low, high = max(low, one), min(high, other)
    if (high - low) * hypot(x2 - x1, y2 - y1) <= 1e-6:
        return None
    part = (low + high) / 2
    return x1 + (x2 - x1) * part, y1 + (y2 - y1) * part


def _text(element: ElementTree.Element, matrix: Matrix, order: int, title: str) -> Text:
    words = element.text or ""
    high = float(element.get("font-size", "0")) / EM_PER_CAPITAL
    wide = text_width(words, high, element.get("font-weight") == "700")
    left = (
        float(element.get("x", "0"))
        - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[element.get("text-anchor", "start")]
    )
    base = float(element.get("y", "0"))
    hang = high * _HANG if _HANGING.intersection(words) else 0.0
    placed = _times(matrix, _transform(element.get("transform", "")))
    corners = [(left, base - high), (left + wide, base - high), (left, base + hang), (left + wide, base + hang)]
    box = _around([_at(placed, corner) for corner in corners])
    return Text(words, box, order, ((box.left + box.right) / 2, (box.top + box.bottom) / 2), title)


def _around(points: list[Point]) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _lines(element: ElementTree.Element, tag: str) -> list[list[Point]]:
    if tag == "path":
        return [_path(part) for part in element.get("d", "").split("M") if part]
    if tag == "rect":
        x, y, wide, high = (float(element.get(name, "0")) for name in ("x", "y", "width", "height"))
        return [[(x, y), (x + wide, y), (x + wide, y + high), (x, y + high), (x, y)]]
    x, y, radius = (float(element.get(name, "0")) for name in ("cx", "cy", "r"))
    turns = [radians(360 * at / 16) for at in range(17)]
    return [[(x + radius * cos(turn), y + radius * sin(turn)) for turn in turns]]


def _path(text: str) -> list[Point]:
    closed = text.endswith("Z")
    points = [tuple(map(float, part.split())) for part in text.removesuffix("Z").split("L")]
    made = [(point[0], point[1]) for point in points]
    return [*made, made[0]] if closed else made


def _transform(text: str) -> Matrix:
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    for name, inside in re.findall(r"(\w+)\(([^)]*)\)", text):
        values = [float(value) for value in inside.replace(",", " ").split()]
        if name == "translate":
            matrix = _times(matrix, (1, 0, 0, 1, values[0], values[1]))
        else:
            turn = radians(values[0])
            x, y = values[1:] if len(values) == 3 else (0.0, 0.0)
            matrix = _times(matrix, (1, 0, 0, 1, x, y))
            matrix = _times(matrix, (cos(turn), sin(turn), -sin(turn), cos(turn), 0, 0))
            matrix = _times(matrix, (1, 0, 0, 1, -x, -y))
    return matrix


def _times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f)


def _at(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    x, y = point
    return a * x + c * y + e, b * x + d * y + f
