"""A drawing -> what its author did wrong, in words: for the tests of every sheet that has one."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from itertools import combinations
from math import cos, radians, sin

from rigc.reports.content import Drawing
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import (
    ANCHORS,
    ARROWS,
    COLOURS,
    FILLS,
    LEVELS,
    PATTERNS,
    SMALL_LETTERS,
    TEXT_COLOURS,
    Box,
    Circle,
    Label,
    Line,
    Point,
    Shape,
    Symbol,
)

_WORDS: dict[str, Collection[str]] = {
    "colour": COLOURS,
    "pattern": PATTERNS,
    "fill": FILLS,
    "anchor": ANCHORS,
    "level": LEVELS,
    "arrow": ARROWS,
}
_NAME = re.compile(r"[a-z0-9]+([-_][a-z0-9]+)*")
_HAIR = 0.05
_SLACK = 0.5  # half a thick line may stand on the edge


def drawing_faults(drawing: Drawing) -> tuple[str, ...]:
    """Words outside the vocabulary, letters too small or too pale, shapes that leave the ground; empty if all is well."""
    faults = [] if _NAME.fullmatch(drawing.name) else [f"'{drawing.name}' is no name for a file"]
    if not drawing.desc:
        faults.append("no description in words")
    for shape, points in _placed(drawing.shapes):
        faults += _wrong_words(shape)
        if isinstance(shape, Label):
            faults += _wrong_letters(shape)
        if not all(_on(drawing, point) for point in points):
            faults.append(f"leaves the ground: {shape}")
    return tuple(faults)


def overlapping_labels(drawing: Drawing) -> tuple[str, ...]:
    """Pairs of labels of which one covers the other, by the width that is reckoned for their letters."""
    boxes = [(shape, points) for shape, points in _placed(drawing.shapes) if isinstance(shape, Label)]
    return tuple(
        f"'{one.text}' at {one.x:g}, {one.y:g} and '{other.text}' at {other.x:g}, {other.y:g}"
        for (one, here), (other, there) in combinations(boxes, 2)
        if _shared(here, there)
    )


def _shared(here: tuple[Point, ...], there: tuple[Point, ...]) -> bool:
    return all(
        min(max(p[axis] for p in here), max(p[axis] for p in there))
        - max(min(p[axis] for p in here), min(p[axis] for p in there))
        > _HAIR
        for axis in (0, 1)
    )


def _wrong_words(shape: Shape) -> Iterator[str]:
    for field, known in _WORDS.items():
        word = getattr(shape, field, None)
        if word is not None and word not in known:
            yield f"no {field} '{word}': {shape}"


def _wrong_letters(label: Label) -> Iterator[str]:
    if label.size_mm < SMALL_LETTERS:
        yield f"letters of {label.size_mm:g} mm: {label}"
    if label.colour not in TEXT_COLOURS:
        yield f"letters too pale: {label}"


def _on(drawing: Drawing, point: Point) -> bool:
    x, y = point
    return -_SLACK <= x <= drawing.width_mm + _SLACK and -_SLACK <= y <= drawing.height_mm + _SLACK


def _placed(shapes: tuple[Shape, ...]) -> Iterator[tuple[Shape, tuple[Point, ...]]]:
    """Each shape that is no symbol, with its outermost points on the drawing."""
    for shape in shapes:
        if not isinstance(shape, Symbol):
            yield shape, _corners(shape)
            continue
        for inner, points in _placed(shape.shapes):
            turned = (_turned(point, shape.rotation) for point in points)
            yield inner, tuple((shape.x + x, shape.y + y) for x, y in turned)


def _corners(shape: Shape) -> tuple[Point, ...]:
    if isinstance(shape, Line):
        return ((shape.x1, shape.y1), (shape.x2, shape.y2))
    if isinstance(shape, Box):
        return ((shape.x, shape.y), (shape.x + shape.width, shape.y + shape.height))
    if isinstance(shape, Circle):
        return ((shape.x - shape.radius, shape.y - shape.radius), (shape.x + shape.radius, shape.y + shape.radius))
    if isinstance(shape, Label):
        return _ends(shape)
    return () if isinstance(shape, Symbol) else shape.points


def _ends(label: Label) -> tuple[Point, ...]:
    width = text_width(label.text, label.size_mm, label.strong)
    start = {"start": 0.0, "middle": -width / 2, "end": -width}.get(label.anchor, 0.0)
    drop = {"baseline": 0.0, "middle": 0.5, "top": 1.0}.get(label.level, 0.0) * label.size_mm
    corners = (
        (start, drop),
        (start + width, drop),
        (start, drop - label.size_mm),
        (start + width, drop - label.size_mm),
    )
    return tuple((label.x + x, label.y + y) for x, y in (_turned(corner, label.rotation) for corner in corners))


def _turned(point: Point, degrees: float) -> Point:
    x, y, angle = *point, radians(degrees)
    return (x * cos(angle) - y * sin(angle), x * sin(angle) + y * cos(angle))
