"""A deck's size and the inset of its feet -> the rectangle on which it stands; and where a foot presses on a unit."""

from __future__ import annotations

from typing import Any

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.analysis.deck.spot_on_thing import spot_of
from rigc.model.deck import Deck, Place
from rigc.model.geometry.polygon import Spot
from rigc.model.things import Unit
from rigc.record import Record
from rigc.traced.given import stated


class Feet(Record):
    """The lines in x and y between which the deck's feet stand, in mm: plain numbers or terms, as what is reckoned from them."""

    left_mm: float
    right_mm: float
    front_mm: float
    rear_mm: float

    def inside(self, x_mm: Any, y_mm: Any) -> dict[str, Any]:
        """How far a point lies inside each side; negative outside."""
        return {
            "left": x_mm - self.left_mm,
            "right": self.right_mm - x_mm,
            "front": y_mm - self.front_mm,
            "rear": self.rear_mm - y_mm,
        }

    def outside(self, x_mm: float, y_mm: float) -> dict[str, float]:
        """How far a point lies outside each side; negative inside."""
        return {side: -float(within) for side, within in self.inside(x_mm, y_mm).items()}


def feet_of(deck: Deck) -> Feet | None:
    """None where the deck's size or the inset of its feet is not stated."""
    if deck.width_mm is None or deck.depth_mm is None or deck.feet_inset_mm is None:
        return None
    return _feet(deck.feet_inset_mm.value, deck.width_mm.value, deck.depth_mm.value)


def told_feet(deck: Deck) -> Feet | None:
    """The same in terms."""
    if deck.width_mm is None or deck.depth_mm is None or deck.feet_inset_mm is None:
        return None
    inset = stated(f"inset of the feet of {deck.name}", deck.feet_inset_mm)
    return _feet(inset, stated(f"{deck.name} width", deck.width_mm), stated(f"{deck.name} depth", deck.depth_mm))


def _feet(inset_mm: Any, width_mm: Any, depth_mm: Any) -> Feet:
    return Feet(inset_mm, width_mm - inset_mm, inset_mm, depth_mm - inset_mm)


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
