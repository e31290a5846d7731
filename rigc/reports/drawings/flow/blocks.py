"""Nodes and hops -> boxes with their step, a name and a second line, and lines with lead numbers."""

from __future__ import annotations

from itertools import pairwise

from rigc.model.rig import Rig
from rigc.reports.drawings.flow.nodes import Hop
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, THIN, Box, Label, Line, Point, Polyline, Shape

HEIGHT = 10.0
"""Of a box, in mm."""
STEP = 6.0
"""Width of the cell that holds a step's number, in mm."""
SIDE = 1.0
"""Each line of a stereo pair runs this far from their middle, in mm."""

_SHORT = {"true": "true bypass", "buffered": "buffered", "trails": "tails ring", "always-on": "always on"}


def box_words(rig: Rig, thing: str) -> tuple[str, str]:
    """The name of a thing, and what it does when it is bypassed; for what is no unit, what kind of thing it is."""
    unit = rig.units.get(thing)
    if unit is None or unit.kind != "unit":
        return thing, rig.things[thing].kind
    if unit.bypass is not None:
        return thing, _SHORT.get(unit.bypass.value, "bypass unknown")
    return thing, "passive" if "passive" in unit.flags else ""


def box_width(words: tuple[str, str]) -> float:
    """The width of a box with these words, in mm."""
    return STEP + max(text_width(words[0], LETTERS, strong=True), text_width(words[1], LETTERS)) + 3


def box(words: tuple[str, str], number: int, x: float, y: float, again: bool = False) -> tuple[Shape, ...]:
    """A box with its upper left corner at (x, y): its step in a cell of its own; dashed if it is drawn elsewhere too."""
    width = box_width(words)
    middle = x + STEP + (width - STEP) / 2
    pattern = "dashed" if again else "solid"
    name = Label(middle, y + (3.0 if words[1] else HEIGHT / 2), words[0], anchor="middle", level="middle", strong=True)
    shapes: list[Shape] = [
        Box(x, y, width, HEIGHT, width_mm=THICK, pattern=pattern, fill="white"),
        Line(x + STEP, y, x + STEP, y + HEIGHT, width_mm=THIN),
        Label(x + STEP / 2, y + HEIGHT / 2, str(number), anchor="middle", level="middle"),
        name,
    ]
    if words[1]:
        shapes.append(Label(middle, y + 7.0, words[1], anchor="middle", level="middle"))
    return tuple(shapes)


def hop_width(hop: Hop) -> float:
    """The length of a line under its numbers, in mm."""
    return max([text_width(mark, LETTERS) for mark in hop.leads] or [0.0]) + 5


def way(hop: Hop, points: tuple[Point, ...], arrow: str = "end") -> tuple[Shape, ...]:
    """The line of a hop along level and upright stretches: two where it is stereo, dotted where it is wireless."""
    pattern = "dotted" if hop.leads == ("wireless",) else "dashed" if hop.inside else "solid"
    if not hop.stereo:
        return (Polyline(points, pattern=pattern, width_mm=THICK, arrow=arrow),)
    return tuple(Polyline(_beside(points, by), pattern=pattern, width_mm=THIN, arrow=arrow) for by in (-SIDE, SIDE))


def marks(hop: Hop, x1: float, x2: float, y: float) -> tuple[Shape, ...]:
    """The numbers of a hop over the middle of its level stretch, the second side's below it."""
    middle, off = (x1 + x2 - 1) / 2, SIDE if hop.stereo else 0.0
    above = [Label(middle, y - off - 1.2, mark, anchor="middle") for mark in hop.leads[:1]]
    below = [Label(middle, y + off + 1.2, ", ".join(hop.leads[1:]), anchor="middle", level="top")] * (
        len(hop.leads) > 1
    )
    return (*above, *below)


def _beside(points: tuple[Point, ...], by: float) -> tuple[Point, ...]:
    """The same way `by` mm to its right; its stretches are level or upright."""
    normals = [(-_sign(y2 - y1), _sign(x2 - x1)) for (x1, y1), (x2, y2) in pairwise(points)]
    found = []
    for (x, y), before, after in zip(points, (normals[0], *normals), (*normals, normals[-1]), strict=True):
        turned = before != after
        across, down = (before[0] + after[0], before[1] + after[1]) if turned else before
        found.append((x + across * by, y + down * by))
    return tuple(found)


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)
