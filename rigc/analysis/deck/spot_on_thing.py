"""A point of a thing, as measured on the thing itself -> where it is on the deck after turning."""

from __future__ import annotations

from math import cos, radians, sin

from rigc.model.deck import Place
from rigc.model.geometry.polygon import Spot, turned
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.things import Thing
from rigc.record import Record


class Skewed(Record):
    """The rectangle around a body that stands askew, and that body's own width and depth, in mm."""

    width_mm: float
    depth_mm: float
    own_width_mm: float
    own_depth_mm: float

    def at(self, spot: Spot, place: Place) -> Spot:
        """Where a point of the body is, which without the skew counts from the body's front-left corner."""
        middle = spot[0] - self.own_width_mm / 2, spot[1] - self.own_depth_mm / 2
        x, y = turned(middle, place.skew_deg)
        return place.x_mm + self.width_mm / 2 + x, place.y_mm + self.depth_mm / 2 + y


def skewed(width_mm: float, depth_mm: float, degrees: float) -> Skewed:
    """The rectangle around a body of that width and depth (after quarter turns) that is turned by so many degrees more."""
    along, across = cos(radians(degrees)), abs(sin(radians(degrees)))
    return Skewed(width_mm * along + depth_mm * across, width_mm * across + depth_mm * along, width_mm, depth_mm)


def spot_of(thing: Thing, place: Place, x_mm: float, y_mm: float) -> Spot:
    """Where a point is on the deck that lies so far right and back of the thing's front-left corner; its body must be known."""
    assert thing.width_mm is not None and thing.depth_mm is not None
    if not place.turned and not place.skew_deg:  # nearly always
        return place.x_mm + x_mm, place.y_mm + y_mm
    width, depth = thing.width_mm.value, thing.depth_mm.value
    spot = Rectangle(x_mm, y_mm, 0.0, 0.0).turned_within(width, depth, place.turned)
    if place.turned in (90, 270):
        width, depth = depth, width
    if place.skew_deg:
        return skewed(width, depth, place.skew_deg).at((spot.x_mm, spot.y_mm), place)
    return place.x_mm + spot.x_mm, place.y_mm + spot.y_mm
