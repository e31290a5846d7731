"""A curve -> the parts of it that lie within a frame."""

from __future__ import annotations

from itertools import pairwise

from rigc.record import Record
from rigc.reports.drawings.shapes import Point


class Frame(Record):
    """An upright rectangle in mm: left, top, right, bottom."""

    left: float
    top: float
    right: float
    bottom: float


def clipped(points: tuple[Point, ...], frame: Frame) -> tuple[tuple[Point, ...], ...]:
    """The runs of a polyline inside the frame; where it leaves, it ends on the frame's edge."""
    runs: list[list[Point]] = []
    for start, end in pairwise(points):
        segment = _inside(start, end, frame)
        if segment is None:
            continue
        if runs and runs[-1][-1] == segment[0]:
            runs[-1].append(segment[1])
        else:
            runs.append(list(segment))
    return tuple(tuple(run) for run in runs)


def _inside(start: Point, end: Point, frame: Frame) -> tuple[Point, Point] | None:
    """The part of a segment inside the frame, after Liang and Barsky (1984): each edge cuts off what lies beyond it."""
    across, down = end[0] - start[0], end[1] - start[1]
    first, last = 0.0, 1.0
    for towards, room in (
        (-across, start[0] - frame.left),
        (across, frame.right - start[0]),
        (-down, start[1] - frame.top),
        (down, frame.bottom - start[1]),
    ):
        if towards == 0:
            if room < 0:
                return None
        elif towards < 0:
            first = max(first, room / towards)
        else:
            last = min(last, room / towards)
    if first > last:
        return None
    begin = start if first == 0 else (start[0] + first * across, start[1] + first * down)
    return begin, (end if last == 1 else (start[0] + last * across, start[1] + last * down))
