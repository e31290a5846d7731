"""A deck's size and the inset of its feet -> the rectangle on which it stands; and where a foot presses on a unit."""

from __future__ import annotations

from rigc.analysis.deck.by_hand import worked_by_hand
from rigc.analysis.deck.spot_on_thing import spot_of
from rigc.model.deck import Deck, Place
from rigc.model.polygon import Spot
from rigc.model.things import Unit
from rigc.record import Record


class Feet(Record):
    """The lines in x and y between which the deck's feet stand, in mm."""

    left_mm: float
    right_mm: float
    front_mm: float
    rear_mm: float

    def outside(self, x_mm: float, y_mm: float) -> dict[str, float]:
        """How far a point lies outside each side; negative inside."""
        return {
            "left": self.left_mm - x_mm,
            "right": x_mm - self.right_mm,
            "front": self.front_mm - y_mm,
            "rear": y_mm - self.rear_mm,
        }

    def inside(self, side: str, x_mm: float, y_mm: float) -> float:
        """How far a point lies inside one side."""
        return -self.outside(x_mm, y_mm)[side]


def feet_of(deck: Deck) -> Feet | None:
    """None where the deck's size or the inset of its feet is not stated."""
    if deck.width_mm is None or deck.depth_mm is None or deck.feet_inset_mm is None:
        return None
    inset = deck.feet_inset_mm.value
    return Feet(inset, deck.width_mm.value - inset, inset, deck.depth_mm.value - inset)


def spots_pressed(unit: Unit, place: Place) -> tuple[Spot, ...]:
    """Where a foot presses on a unit, on the deck: on a treadle at both ends, on each switch. Its body must be known."""
    if worked_by_hand(unit):
        return ()
    ends = heel_and_toe(unit, place) if unit.treadle_mm is not None else ()
    return (*ends, *(spot_of(unit, place, switch.x_mm, switch.y_mm) for switch in unit.switches))


def heel_and_toe(unit: Unit, place: Place) -> tuple[Spot, Spot]:
    """The middles of a treadle's front and rear edges on the deck: between them a foot presses. Its body must be known."""
    assert unit.width_mm is not None and unit.depth_mm is not None
    middle = unit.width_mm.value / 2
    return spot_of(unit, place, middle, 0.0), spot_of(unit, place, middle, unit.depth_mm.value)
