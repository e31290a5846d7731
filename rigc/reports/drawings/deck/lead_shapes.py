"""Ways of leads -> the leads' numbers at both ends."""

from __future__ import annotations

from itertools import pairwise

from rigc.analysis.deck.placement import JackPoint
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.shapes import Label, Point, Shape


def lead_numbers(ways: tuple[Way, ...], view: View, room: LabelRoom) -> tuple[Shape, ...]:
    """Each lead's number at both its ends, inside the bodies where there is room; else once, somewhere on its way."""
    labels: list[Label] = []
    for way in ways:
        points = tuple(view.point(*point) for point in way.points)
        ends = zip(way.jacks, (points[1], points[-2]), strict=True)
        found = [room.place(_at_jack(way.shown, jack, exit_, view)) for jack, exit_ in ends]
        if not any(found):
            found.append(room.place(_on_way(way.shown, points)))
        labels += [label for label in found if label is not None]
    return tuple(labels)


def _at_jack(mark: str, jack: JackPoint, exit_: Point, view: View) -> list[Label]:
    """Behind the jack, along the way the plug goes in; then further in, before the plug, and beside it."""
    x, y = view.point(jack.x_mm, jack.y_mm)
    dx, dy = view.direction(jack.dx, jack.dy)
    if dy:
        return _upright(mark, x, y, exit_[1], dy)
    if dx:
        return _level(mark, x, y, exit_[0], dx)
    return [
        *(Label(x + 2.2 * side, y, mark, anchor=_ANCHOR[side], level="middle", halo=True) for side in (1, -1)),
        *(Label(x, y - 2.4 * side, mark, anchor="middle", level=_LEVEL[side], halo=True) for side in (1, -1)),
        *(
            Label(x, y - 2.4 * side, mark, anchor=_ANCHOR[side], level="middle", rotation=-90, halo=True)
            for side in (1, -1)
        ),
    ]


def _upright(mark: str, x: float, y: float, beyond: float, dy: int) -> list[Label]:
    """A jack that looks up or down the paper: the number reads upwards."""
    inward, outward = ("start", "end") if dy > 0 else ("end", "start")
    inside = [
        Label(x, y - (0.8 + step) * dy, mark, anchor=inward, level="middle", rotation=-90, halo=True) for step in _STEPS
    ]
    outside = [
        Label(x + aside, beyond + 0.8 * dy, mark, anchor=outward, level="middle", rotation=-90, halo=True)
        for aside in (0.0, 1.8, -1.8)
    ]
    return inside + outside


_ANCHOR = {1: "start", -1: "end"}
_LEVEL = {1: "baseline", -1: "top"}
_STEPS = (0.0, 1.5, 3.0, 7.5, 9.0)


def _level(mark: str, x: float, y: float, beyond: float, dx: int) -> list[Label]:
    """A jack that looks to a side."""
    inside = [
        Label(x - (0.8 + step) * dx, y + aside, mark, anchor="end" if dx > 0 else "start", level="middle", halo=True)
        for aside in (0.0, 1.7, -1.7, 3.4, -3.4)
        for step in (0.0, 1.5)
    ]
    outside = [
        Label(beyond + 0.8 * dx, y + aside, mark, anchor="start" if dx > 0 else "end", level="middle", halo=True)
        for aside in (0.0, 1.8, -1.8)
    ]
    return inside + outside


def _on_way(mark: str, points: tuple[Point, ...]) -> list[Label]:
    choices = []
    for (x1, y1), (x2, y2) in pairwise(points):
        turn = -90.0 if abs(y2 - y1) > abs(x2 - x1) else 0.0
        choices += [
            Label(
                x1 + (x2 - x1) * part,
                y1 + (y2 - y1) * part,
                mark,
                anchor="middle",
                level="middle",
                rotation=turn,
                halo=True,
            )
            for part in (0.5, 0.35, 0.65, 0.2, 0.8)
        ]
    return choices
