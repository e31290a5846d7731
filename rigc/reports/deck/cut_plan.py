"""A deck -> what a shop's router or laser cuts it from: its outline, its holes with their numbers, and what will stand on it."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.routes.deck_holes import DeckHole, DeckHoles
from rigc.model.geometry.polygon import Polygon
from rigc.model.rig import Rig
from rigc.record import Record


class Standing(Record):
    """A thing on the deck or below it, by its corners in mm."""

    name: str
    corners: Polygon
    under: bool


class CutPlan(Record):
    """A deck of known size, in mm, seen from above: origin at its front-left corner, x right, y away from the player.

    `rails` are the stretches in y of those that it has, `drops` the lines in y along which leads go through it.
    """

    name: str
    width_mm: float
    depth_mm: float
    holes: tuple[DeckHole, ...]
    bodies: tuple[Standing, ...]
    rails: tuple[tuple[float, float], ...]
    drops: tuple[float, ...]


class CutPlans(Record):
    """Those of all decks of known size that have a thing on them."""

    all: tuple[CutPlan, ...]


def cut_plans(rig: Rig, placement: Placement, holes: DeckHoles) -> CutPlans:
    """The holes are those of the hole schedule, in its order: H1 is the first."""
    found = []
    for deck in rig.decks.values():
        here = [body for body in placement.outlines.values() if body.deck == deck.name]
        if here and deck.width_mm is not None and deck.depth_mm is not None:
            bodies = tuple(Standing(body.thing, body.corners, body.under) for body in here)
            rails = tuple((rail.front_mm, rail.rear_mm) for rail in deck.rails)
            size = deck.width_mm.value, deck.depth_mm.value
            found.append(CutPlan(deck.name, *size, holes.of(deck.name), bodies, rails, deck.drops_mm))
    return CutPlans(tuple(found))
