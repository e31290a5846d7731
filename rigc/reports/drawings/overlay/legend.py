"""What an overlay shows -> the signs and words of its legend."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.overlay.triangles import sign
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Box, Circle, Label, Line, Shape

SIGNS: dict[str, tuple[Shape, ...]] = {
    "as it was": (Box(1, -1.5, 8, 3, "grey", "dashed", THIN),),
    "as it is, changed": (Box(1, -1.5, 8, 3, width_mm=THICK, fill="white"),),
    "unchanged": (Box(1, -1.5, 8, 3, width_mm=THIN, fill="tint"),),
    "lead as it ran": (Line(0, 0, 10, 0, "grey", "dashed"),),
    "lead as it runs": (Line(0, 0, 10, 0, width_mm=THICK),),
    "jack or hole": (Circle(5, 0, 1.4),),
    "on top of the deck": (Box(1, -1.5, 8, 3, "grey", "dotted", HAIR),),
}


_TALL = 8.0  # the row of the triangle, in mm


def triangle_row(numbered: bool, told: str, left: float, right: float, top: float) -> tuple[tuple[Shape, ...], float]:
    """What the label in a triangle is (`numbered`: the revision numbers its changes), what more is told, and where that ends."""
    label, words = ("1a", "change of the rework plan, row of the table") if numbered else ("1", "row of the table")
    middle, text = top + _TALL / 2, left + 11.5
    beside = text + text_width(words, LETTERS) + 6
    fits = beside + text_width(told, LETTERS) <= right
    more = Label(beside, middle, told, level="middle") if fits else Label(left, top + _TALL + LETTERS, told)
    foot = top + _TALL + (0.0 if fits else LETTERS + 1.5)
    return (*sign(label, left + 5, middle), Label(text, middle, words, level="middle"), more), foot


def overlay_words(below: bool, leads: bool, rings: bool) -> dict[str, str]:
    """Those of leads, of jacks and holes, and of what stands on top, only where they are drawn."""
    left_out = {
        *(() if leads else ("lead as it ran", "lead as it runs")),
        *(() if rings else ("jack or hole",)),
        *(() if below else ("on top of the deck",)),
    }
    return {words: words for words in SIGNS if words not in left_out}
