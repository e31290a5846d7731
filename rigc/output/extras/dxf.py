"""A deck's plan -> DXF in millimetres, by ezdxf (extra `dxf`), for the shop's router or laser.

DXF R2000, which cutting programs of twenty years read. Only the layers OUTLINE and HOLES are to be cut; a hole whose size
nobody stated is a cross on MARKS, since a machine would cut whatever circle it is given.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from rigc.analysis.routes.deck_holes import DeckHole
from rigc.output.escapes import printable
from rigc.output.extras.missing_extra import of_extra
from rigc.reports.content import TitleBlock
from rigc.reports.deck.cut_plan import CutPlan

LAYERS = {
    "OUTLINE": ("to be cut: the edge of the deck", 7),
    "HOLES": ("to be cut: holes whose diameter is stated", 1),
    "MARKS": ("not to be cut: centres of holes to suit a part, and where leads go through", 3),
    "BODIES": ("not to be cut: what stands on the deck", 5),
    "BELOW": ("not to be cut: what hangs below it, rails, drop lines", 8),
    "TEXT": ("not to be cut", 8),
}
_CROSS, _LETTERS = 5.0, 3.5
_ACTS = re.compile(r"%%|\^|\\(?=[A-Za-z~{}\\])")


def render(plan: CutPlan, title: TitleBlock) -> bytes:
    """The file, in the encoding that its version asks for. Raises `MissingExtra` where the package is not installed."""
    with of_extra("dxf", "DXF", "ezdxf"):
        import ezdxf
    with _always_the_same(ezdxf):
        drawing = ezdxf.new("R2000", units=4)  # millimetres
        for name, (about, colour) in LAYERS.items():
            drawing.layers.add(name, color=colour).description = about
        _draw(drawing.modelspace(), plan, title)
        held = io.StringIO()
        drawing.write(held)
    written: bytes = held.getvalue().encode(drawing.output_encoding, errors="dxfreplace")
    return re.sub(rb"\\U\+[0-9a-f]{4}", lambda found: b"\\U+" + found[0][3:].upper(), written)  # as readers look for it


def _draw(space: Any, plan: CutPlan, title: TitleBlock) -> None:
    wide, deep = plan.width_mm, plan.depth_mm
    _loop(space, ((0, 0), (wide, 0), (wide, deep), (0, deep)), "OUTLINE")
    for front, rear in plan.rails:
        _loop(space, ((0, front), (wide, front), (wide, rear), (0, rear)), "BELOW")
    for y in plan.drops:
        space.add_line((0, y), (wide, y), dxfattribs={"layer": "BELOW"})
    for hole in plan.holes:
        at = (float(hole.x_mm), float(hole.y_mm))
        if hole.diameter_mm is None:
            _marks(space, hole)
        elif hole.to_x_mm is None:
            space.add_circle(at, float(hole.diameter_mm) / 2, dxfattribs={"layer": "HOLES"})
        else:
            _slot(space, hole, float(hole.diameter_mm) / 2)
        _text(space, hole.number, at[0] + 1.5, at[1] + 1.5)
    for body in plan.bodies:
        _loop(space, body.corners, "BELOW" if body.under else "BODIES")
        left, front = min(x for x, _ in body.corners), min(y for _, y in body.corners)
        _text(space, body.name, float(left) + 2, float(front) + 2)
    draft = "DRAFT, not to build from: " if title.draft else ""
    lines = (
        f"{draft}{title.rig} ({title.code}), deck {plan.name}, revision {title.revision}, {title.date}, source {title.source_hash}",
        "seen from above, the player stands at y 0; millimetres; cut OUTLINE and HOLES only",
    )
    for row, line in enumerate(lines):
        _text(space, line, 0.0, -8.0 - 6 * row)


def _slot(space: Any, hole: DeckHole, half: float) -> None:
    """Two straight sides with half a circle at each end: a bulge of 1 is half a turn."""
    left, right, y = float(hole.x_mm), float(hole.right_mm), float(hole.y_mm)
    points = [(left, y - half, 0), (right, y - half, 1), (right, y + half, 0), (left, y + half, 1)]
    space.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": "HOLES"})


def _marks(space: Any, hole: DeckHole) -> None:
    """A cross at each end of what has no known size, and a line between them."""
    y = float(hole.y_mm)
    ends = tuple(dict.fromkeys((float(hole.x_mm), float(hole.right_mm))))
    for x in ends:
        space.add_line((x - _CROSS, y), (x + _CROSS, y), dxfattribs={"layer": "MARKS"})
        space.add_line((x, y - _CROSS), (x, y + _CROSS), dxfattribs={"layer": "MARKS"})
    if len(ends) > 1:
        space.add_line((ends[0], y), (ends[1], y), dxfattribs={"layer": "MARKS"})


def _loop(space: Any, corners: Any, layer: str) -> None:
    space.add_lwpolyline([(float(x), float(y)) for x, y in corners], close=True, dxfattribs={"layer": layer})


def _text(space: Any, text: str, x: float, y: float) -> None:
    space.add_text(plain(text), height=_LETTERS, dxfattribs={"layer": "TEXT", "insert": (x, y)})


def plain(text: str) -> str:
    """The text on one line with nothing in it that acts in a drawing: no `%%c`, no `^J`, no `\\U+00B0`."""
    return _ACTS.sub(lambda found: " ".join(found[0]) if found[0] == "%%" else f"{found[0]} ", printable(text))[:2000]


@contextmanager
def _always_the_same(ezdxf: Any) -> Iterator[None]:
    """The package writes the hour and a number of its own into each file, unless it is asked not to."""
    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before
