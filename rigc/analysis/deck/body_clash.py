"""BodyClash: outlines on their decks -> which of them take the same room, and which reach over an edge."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from rigc.analysis.deck.placement import Outline, Placement
from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.polygon import reach
from rigc.model.rig import Rig
from rigc.record import Record

_HAIR_MM = 1e-6


class Overlap(Record):
    """Two bodies on one side of a deck that take the same room, in mm: how far across and along, and how far to part them."""

    one: Outline
    other: Outline
    across_mm: float
    along_mm: float
    into_mm: float


class BodyClash(Record):
    """All overlaps; and what reaches over the edges of its deck: by thing, how many mm over which side."""

    overlaps: tuple[Overlap, ...]
    beyond: dict[str, dict[str, float]]

    def between(self, one: str, other: str) -> bool:
        """Whether two things take the same room: what else is wrong between them follows from that."""
        return (one, other) in self._pairs or (other, one) in self._pairs

    @cached_property
    def _pairs(self) -> frozenset[tuple[str, str]]:
        return frozenset((each.one.thing, each.other.thing) for each in self.overlaps)


def body_clash(rig: Rig, placement: Placement) -> BodyClash:
    """Compares all bodies on one side of a deck with each other, and each with the deck's edges."""
    bodies = tuple(placement.outlines.values())
    over = {body.thing: found for body in bodies if (found := _beyond(rig, body))}
    return BodyClash(tuple(_overlaps(bodies)), over)


def _overlaps(bodies: tuple[Outline, ...]) -> Iterator[Overlap]:
    for first, second in neighbours([body.area for body in bodies]):
        one, other = bodies[first], bodies[second]
        if (one.deck, one.under) != (other.deck, other.under):
            continue
        across, along = one.area.overlap(other.area)
        into = reach(one.corners, other.corners) if one.askew or other.askew else min(across, along)
        if into > _HAIR_MM:
            yield Overlap(one, other, across, along, into)


def _beyond(rig: Rig, body: Outline) -> dict[str, float]:
    deck, area = rig.decks.get(body.deck or ""), body.area
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return {}
    sides = {
        "left": -area.x_mm,
        "right": area.right_mm - deck.width_mm.value,
        "front": -area.y_mm,
        "rear": area.rear_mm - deck.depth_mm.value,
    }
    return {side: over for side, over in sides.items() if over > _HAIR_MM}


COMPUTE = body_clash
