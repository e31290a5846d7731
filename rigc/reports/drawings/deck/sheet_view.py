"""The size of a deck -> its view on a landscape page, with room for dimensions, names of parts and the legend."""

from __future__ import annotations

from rigc.reports.drawings.deck.deck_ground import MARGIN_RIGHT
from rigc.reports.drawings.deck.view import PAGE_HEIGHT, PAGE_WIDTH, View, fitting_scale
from rigc.reports.drawings.means.label_box import Room

LEFT, TOP, BOTTOM = 16.0, 9.5, 30.5
"""Room left of, above and below a deck, in mm."""

LEGEND = 18.0
"""From a deck down to its legend, in mm: running dimensions and the name of the front edge stand between."""

BELOW_TOP, BELOW_LEGEND = 14.0, 14.0
"""The same for a deck seen from below: its stamp and the name of its front edge stand above it, running dimensions below."""

PLAIN_BOTTOM, PLAIN_LEGEND = 18.0, 7.0
"""The same below a deck that is drawn without dimensions."""


def view_of(width_mm: float, depth_mm: float, below: bool = False, around_mm: tuple[float, float] = (0.0, 0.0)) -> View:
    """The deck at the largest scale that fits on a page.

    What is around it on each side, in x and in y, gets room where the scale stays as it is.
    """
    wide, high = PAGE_WIDTH - LEFT - MARGIN_RIGHT, PAGE_HEIGHT - TOP - BOTTOM
    scale = fitting_scale(width_mm, depth_mm, wide, high)
    aside, along = (max(0.0, each / scale - _WITHIN) for each in around_mm)
    if width_mm / scale + 2 * aside > wide or depth_mm / scale + 2 * along > high:
        aside, along = 0.0, 0.0
    return View(scale, LEFT + aside, (BELOW_TOP if below else TOP) + along, width_mm, depth_mm, below, aside, along)


def has_room(view: View, around_mm: tuple[float, float]) -> bool:
    """Whether an outline so far around the deck keeps clear of what is written in the margins."""
    return all(
        each / view.scale <= extra + _WITHIN + 1e-9
        for each, extra in zip(around_mm, (view.aside, view.along), strict=True)
    )


def foot_of(view: View) -> float:
    """Where the legend begins."""
    return view.bottom + view.along + LEGEND


def ground_of(view: View) -> Room:
    """The whole drawing of a deck: wide enough for its legend even where the deck is small."""
    width = max(view.right + view.aside + MARGIN_RIGHT, _LEAST_WIDTH)
    return Room(0, 0, round(width, 1), round(view.bottom + view.along + BOTTOM, 1))


def label_ground(view: View, legend: float = LEGEND) -> Room:
    """Where the labels of a deck may stand: not in its legend, which begins so far below it."""
    return Room(0, 0, ground_of(view).right, view.bottom + view.along + legend - 0.5)


_LEAST_WIDTH = 180.0
_WITHIN = 4.0  # what the margins spare for an outline around the deck, in mm
