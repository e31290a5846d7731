"""The size of a deck -> its view on a landscape page, with room for dimensions, names of parts and the legend."""

from __future__ import annotations

from rigc.reports.deck.deck_ground import MARGIN_RIGHT
from rigc.reports.deck.view import PAGE_HEIGHT, PAGE_WIDTH, View, fitting_scale
from rigc.reports.drawing.label_box import Room

LEFT, TOP, BOTTOM = 12.0, 12.0, 23.0
"""Room left of, above and below a deck, in mm."""

LEGEND = 8.0
"""From a deck down to its legend, in mm: labels of leads may stand between."""


def view_of(width_mm: float, depth_mm: float, below: bool = False) -> View:
    """The deck at the largest scale that fits on a page."""
    scale = fitting_scale(width_mm, depth_mm, PAGE_WIDTH - LEFT - MARGIN_RIGHT, PAGE_HEIGHT - TOP - BOTTOM)
    return View(scale, LEFT, TOP, width_mm, depth_mm, below)


def ground_of(view: View) -> Room:
    """The whole drawing of a deck: wide enough for its legend even where the deck is small."""
    width = max(view.right + MARGIN_RIGHT, _LEAST_WIDTH)
    return Room(0, 0, round(width, 1), round(view.bottom + BOTTOM, 1))


def label_ground(view: View) -> Room:
    """Where the labels of a deck may stand: not in its legend."""
    return Room(0, 0, ground_of(view).right, view.bottom + LEGEND - 0.5)


_LEAST_WIDTH = 180.0
