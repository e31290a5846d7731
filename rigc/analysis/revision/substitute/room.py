"""A body that overlaps others where it stands -> the nearest place that is free, in its row or close by."""

from __future__ import annotations

from rigc.analysis.deck.kept_free import kept_free
from rigc.analysis.deck.placement import Outline, Placement
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig

_HAIR_MM = 1e-6


def overlaps(rig: Rig, placement: Placement, thing: str) -> bool:
    """Whether a thing overlaps another, leaves its deck, or reaches into what is kept free."""
    body = placement.outline(thing)
    return body is not None and not _is_free(body.area, *_around(rig, placement, body))


def nearest_room(rig: Rig, placement: Placement, thing: str) -> tuple[float, float] | None:
    """The front-left corner in mm, on the same side of the same deck, at which nothing is in the way: the one that is the
    least way off, and no farther than the thing is wide and deep. None where there is none.

    Every free corner that is nearest touches something in x and in y, or keeps that figure.
    """
    body = placement.outline(thing)
    if body is None:
        return None
    here = body.area
    blocked, ground = _around(rig, placement, body)
    xs = [here.x_mm, *(each.x_mm - here.width_mm for each in blocked), *(each.right_mm for each in blocked)]
    ys = [here.y_mm, *(each.y_mm - here.depth_mm for each in blocked), *(each.rear_mm for each in blocked)]
    if ground is not None:
        xs += [ground.x_mm, ground.right_mm - here.width_mm]
        ys += [ground.y_mm, ground.rear_mm - here.depth_mm]
    corners = sorted(
        (abs(x - here.x_mm) + abs(y - here.y_mm), x, y)
        for x in set(xs)
        for y in set(ys)
        if abs(x - here.x_mm) <= here.width_mm and abs(y - here.y_mm) <= here.depth_mm
    )
    spots = (Rectangle(x, y, here.width_mm, here.depth_mm) for _, x, y in corners)
    return next(((spot.x_mm, spot.y_mm) for spot in spots if _is_free(spot, blocked, ground)), None)


def _around(rig: Rig, placement: Placement, body: Outline) -> tuple[list[Rectangle], Rectangle | None]:
    """What is in the way on its side of its deck, and the ground that it must not leave."""
    deck = rig.decks.get(body.deck or "")
    blocked = [
        each.area
        for each in placement.outlines.values()
        if each.thing != body.thing and (each.deck, each.under) == (body.deck, body.under)
    ]
    if deck is None:
        return blocked, None
    blocked += [kept.room for kept in kept_free(rig, deck, body)]
    if deck.width_mm is None or deck.depth_mm is None:
        return blocked, None
    tier = next((each for each in deck.tiers if each.name == rig.places[body.thing].tier), None)
    front, rear = (0.0, deck.depth_mm.value) if tier is None else (tier.front_mm, tier.rear_mm)
    return blocked, Rectangle(0.0, front, deck.width_mm.value, rear - front)


def _is_free(spot: Rectangle, blocked: list[Rectangle], ground: Rectangle | None) -> bool:
    if any(min(spot.overlap(each)) > _HAIR_MM for each in blocked):
        return False
    return ground is None or (
        spot.x_mm >= ground.x_mm - _HAIR_MM
        and spot.y_mm >= ground.y_mm - _HAIR_MM
        and spot.right_mm <= ground.right_mm + _HAIR_MM
        and spot.rear_mm <= ground.rear_mm + _HAIR_MM
    )
