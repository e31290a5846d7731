"""Axes and curves -> the shapes of a plot: several curves told apart by pattern and width, each named at its end."""

from __future__ import annotations

from rigc.record import Record
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.plots.axis import Axis
from rigc.reports.drawings.plots.clipping import Frame, clipped
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.plots.ticks import tick_text
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Box, Circle, Label, Line, Point, Polyline, Shape

STYLES = (
    ("black", "solid", THICK),
    ("blue", "dashed", THICK),
    ("vermillion", "dash-dot", THICK),
    ("green", "dotted", THICK),
    ("black", "long-dash", THIN),
    ("blue", "dash-dot-dot", THIN),
    ("vermillion", "dash-dash-dot", THIN),
    ("green", "long-short", THIN),
)
"""Colour, pattern and width of the first curve, the second...: no two share a pattern."""

MARGIN_LEFT, MARGIN_TOP, MARGIN_BOTTOM = 17.0, 3.0, 13.0
LEADER, SAMPLE = 5.0, 8.0
ROW = 4.2  # from label to label, in mm


class Curve(Record):
    """A named curve through (x, y) in the units of the axes, from left to right."""

    name: str
    points: tuple[Point, ...]


class Mark(Record):
    """A point worth its words, such as a peak: a small ring, and the text above it (or below)."""

    x: float
    y: float
    text: str
    below: bool = False


def plot(
    x: Axis, y: Axis, curves: tuple[Curve, ...], width: float, height: float, marks: tuple[Mark, ...] = ()
) -> tuple[Shape, ...]:
    """The shapes of a plot that fills width x height mm. Raises `ValueError` for more curves than there are `STYLES`."""
    if len(curves) > len(STYLES):
        raise ValueError(f"{len(curves)} curves in one plot; {len(STYLES)} can be told apart")
    names = max((text_width(curve.name, LETTERS) for curve in curves), default=0.0)
    frame = Frame(MARGIN_LEFT, MARGIN_TOP, width - LEADER - SAMPLE - names - 2.0, height - MARGIN_BOTTOM)
    outline = Box(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top)
    return (
        *_grid(x, y, frame),
        outline,
        *_numbers(x, y, frame),
        *_curves(x, y, curves, frame),
        *(shape for mark in marks for shape in _mark(x, y, mark, frame)),
    )


def _at(x: Axis, y: Axis, point: Point, frame: Frame) -> Point:
    return (
        frame.left + x.part(point[0]) * (frame.right - frame.left),
        frame.bottom - y.part(point[1]) * (frame.bottom - frame.top),
    )


def _grid(x: Axis, y: Axis, frame: Frame) -> tuple[Shape, ...]:
    """Solid where a number stands, dotted in between; nothing on the frame itself, and the zero line black."""
    wide, high = frame.right - frame.left, frame.bottom - frame.top
    shapes: list[Shape] = []
    for axis, length, upright in ((x, wide, False), (y, high, True)):
        major = axis.major(length, upright)
        for value in sorted({*major, *axis.minor()}):
            place = axis.part(value)
            if not 0.001 < place < 0.999:
                continue
            colour = "black" if upright and value == 0 and not axis.log else "grey"
            pattern = "solid" if value in major else "dotted"
            (x1, y1), (x2, y2) = (
                ((frame.left, frame.bottom - place * high), (frame.right, frame.bottom - place * high))
                if upright
                else ((frame.left + place * wide, frame.top), (frame.left + place * wide, frame.bottom))
            )
            shapes.append(Line(x1, y1, x2, y2, colour, pattern, HAIR))
    return tuple(shapes)


def _numbers(x: Axis, y: Axis, frame: Frame) -> tuple[Shape, ...]:
    wide, high = frame.right - frame.left, frame.bottom - frame.top
    along = (
        Label(frame.left + x.part(value) * wide, frame.bottom + 2, tick_text(value), anchor="middle", level="top")
        for value in x.major(wide)
    )
    up = (
        Label(frame.left - 1.5, frame.bottom - y.part(value) * high, tick_text(value), anchor="end", level="middle")
        for value in y.major(high, upright=True)
    )
    middle = (frame.top + frame.bottom) / 2
    return (
        *along,
        *up,
        Label((frame.left + frame.right) / 2, frame.bottom + 8, x.named(), anchor="middle", level="top"),
        Label(2, middle, y.named(), anchor="middle", level="top", rotation=-90),
    )


def _curves(x: Axis, y: Axis, curves: tuple[Curve, ...], frame: Frame) -> tuple[Shape, ...]:
    """Each curve; from its last point in the frame a leader to a sample of its line, and its name."""
    runs = [clipped(tuple(_at(x, y, point, frame) for point in curve.points), frame) for curve in curves]
    ends = [run[-1][-1] if run else (frame.right, frame.bottom) for run in runs]
    heights = spread(tuple(end[1] for end in ends), ROW, frame.top + 1, frame.bottom - 1)
    shapes: list[Shape] = []
    for curve, parts, end, height, style in zip(curves, runs, ends, heights, STYLES, strict=False):
        colour, pattern, thick = style
        shapes += [Polyline(part, colour, pattern, thick) for part in parts]
        start, stop = frame.right + LEADER, frame.right + LEADER + SAMPLE
        shapes.append(Line(*end, start, height, "grey", width_mm=HAIR))
        shapes.append(Line(start, height, stop, height, colour, pattern, thick))
        shapes.append(Label(stop + 1.5, height, curve.name, level="middle"))
    return tuple(shapes)


def _mark(x: Axis, y: Axis, mark: Mark, frame: Frame) -> tuple[Shape, ...]:
    across, down = _at(x, y, (mark.x, mark.y), frame)
    label = Label(across, down + 2, mark.text, anchor="middle", level="top", halo=True)
    if not mark.below:
        label = Label(across, down - 2, mark.text, anchor="middle", halo=True)
    return (Circle(across, down, 0.8, fill="white"), label)
