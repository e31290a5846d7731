"""A deck in a case and a thing on it -> how high the thing reaches above the case's floor, in mm."""

from __future__ import annotations

from math import cos, radians, sin

from rigc.analysis.deck.placement import Outline
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class HeightInCase(Record):
    """The parts of a height in mm: the room below the deck, the deck, the thing with its tier. `tilt_mm` is what the deck's
    angle adds (it may take away a little at the front)."""

    thing: str
    clearance_mm: float
    thickness_mm: float
    height_mm: float
    tilt_mm: float

    @property
    def top_mm(self) -> float:
        """Of the thing's highest edge above the floor."""
        return self.clearance_mm + self.thickness_mm + self.height_mm + self.tilt_mm


def parked_mm(rig: Rig, body: Outline) -> float | None:
    """How high a thing reaches above the plain deck, a treadle parked at the lower end of its travel; None if not known."""
    thing = rig.things[body.thing]
    if isinstance(thing, Thing) and thing.treadle_mm is not None:
        return body.raised_mm + min(thing.treadle_mm)
    return None if body.height_mm is None else body.raised_mm + body.height_mm


def height_in_case(rig: Rig, deck: Deck, body: Outline) -> HeightInCase | None:
    """None where the thing's height, or the deck's thickness or clearance, is not known.

    A deck at an angle has its front edge at its clearance and rises from there; a thing's highest edge is then the rear one.
    """
    height = parked_mm(rig, body)
    if height is None or deck.clearance_mm is None or deck.thickness_mm is None:
        return None
    thickness, tilt = deck.thickness_mm.value, 0.0
    if deck.angle_deg is not None:
        angle = radians(deck.angle_deg.value)
        tilt = body.area.rear_mm * sin(angle) - (thickness + height) * (1 - cos(angle))
    return HeightInCase(body.thing, deck.clearance_mm.value, thickness, height, tilt)
