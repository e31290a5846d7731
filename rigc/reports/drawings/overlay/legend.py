"""The signs of an overlay -> its legend."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.overlay.triangles import sign
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Box, Circle, Label, Line, Shape, Symbol

_SIGN, _GAP, _ROW, _TALL = 10.0, 4.0, 4.6, 6.2  # the last is the row of the triangle


def overlay_legend(
    left: float, right: float, top: float, below: bool, leads: bool, rings: bool, numbered: bool
) -> tuple[Shape, ...]:
    """The signs in rows; those of leads, of jacks and holes, and of what stands on top, only where they are drawn; `numbered`: the revision numbers its changes."""
    signs: dict[str, tuple[Shape, ...]] = {
        "as it was": (Box(1, -1.5, 8, 3, "grey", "dashed", THIN),),
        "as it is, changed": (Box(1, -1.5, 8, 3, width_mm=THICK),),
        "unchanged": (Box(1, -1.5, 8, 3, width_mm=THIN),),
    }
    if leads:
        signs["lead as it ran"] = (Line(0, 0, 10, 0, "grey", "dashed"),)
        signs["lead as it runs"] = (Line(0, 0, 10, 0),)
    if rings:
        signs["jack or hole"] = (Circle(5, 0, 1.4),)
    if below:
        signs["on top of the deck"] = (Box(1, -1.5, 8, 3, "grey", "dotted", HAIR),)
    shapes: list[Shape] = []
    x, y = left, top + _ROW / 2
    for words, drawn in signs.items():
        wide = _SIGN + 1.5 + text_width(words, LETTERS) + _GAP
        if x > left and x + wide - _GAP > right:
            x, y = left, y + _ROW
        shapes += [Symbol("", drawn, x, y), Label(x + _SIGN + 1.5, y, words, level="middle")]
        x += wide
    label, words = ("1a", "change of the rework plan, row of the table") if numbered else ("1", "row of the table")
    if x + _SIGN + 1.5 + text_width(words, LETTERS) > right:
        x, y = left, y + _TALL
    return (*shapes, *sign(label, x + 4, y), Label(x + _SIGN + 1.5, y, words, level="middle"))
