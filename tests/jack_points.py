"""A jack of no thing, somewhere on a deck, for tests that ask only where it is."""

from __future__ import annotations

from rigc.analysis.deck.placement import JackPoint
from rigc.traced.figure import Answer, figure
from rigc.traced.given import unstated
from rigc.traced.units import TENTHS


def jack_point(x_mm: float, y_mm: float, deck: str | None, height_mm: float | None = None) -> JackPoint:
    """It looks to the rear, on top of the deck."""
    height = figure("jack.height", unstated("how high the jack is"), TENTHS, rule="", source="")
    told = Answer("jack.point", f"{x_mm:g}, {y_mm:g}", "as placed by the test", rule="", source="")
    return JackPoint(x_mm, y_mm, height_mm, 0, 0, 1, False, False, deck, height, told)
