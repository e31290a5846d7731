"""Nodes and hops -> boxes with a name and a second line, and arrows with lead numbers."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.drawings.flow.nodes import Hop
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, THICK, THIN, Box, Label, Line, Shape

HEIGHT = 10.0
"""Of a box, in mm."""

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
    return max(text_width(words[0], LETTERS, strong=True), text_width(words[1], LETTERS)) + 3


def box(words: tuple[str, str], x: float, y: float) -> tuple[Shape, ...]:
    """A box with its upper left corner at (x, y)."""
    width = box_width(words)
    middle = x + width / 2
    name = Label(middle, y + (3.2 if words[1] else HEIGHT / 2), words[0], anchor="middle", level="middle", strong=True)
    shapes: list[Shape] = [Box(x, y, width, HEIGHT, width_mm=THICK, fill="white"), name]
    if words[1]:
        shapes.append(Label(middle, y + 7.2, words[1], anchor="middle", level="middle"))
    return tuple(shapes)


def hop_width(hop: Hop) -> float:
    """The length of an arrow under its numbers, in mm."""
    return max([text_width(mark, LETTERS) for mark in hop.leads] or [0.0]) + 5


def arrow(hop: Hop, x: float, y: float) -> tuple[Shape, ...]:
    """An arrow from (x, y) to the right: two lines where it is stereo, dotted where it is wireless; numbers at each line."""
    end = x + hop_width(hop)
    pattern = "dotted" if hop.leads == ("wireless",) else "solid"
    heights = (y - 1.0, y + 1.0) if hop.stereo else (y,)
    lines = tuple(
        Line(x, at, end, at, pattern=pattern, width_mm=THIN if hop.stereo else THICK, arrow="end") for at in heights
    )
    middle = (x + end - 1) / 2
    above = [Label(middle, heights[0] - 1.2, mark, anchor="middle") for mark in hop.leads[:1]]
    below = [Label(middle, heights[-1] + 1.2, mark, anchor="middle", level="top") for mark in hop.leads[1:2]]
    return (*lines, *above, *below)
