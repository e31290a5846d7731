"""Outlines and heights on a deck -> the faces that are seen from its rear or its side, the farthest first."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody
from rigc.model.deck import Deck
from rigc.record import Record

REAR, SIDE = "rear", "side"


class Face(Record):
    """A thing as seen: from `low` to `high` along the edge and from `bottom` to `top` over the deck's upper surface, in mm.

    `near` says how near to the eye it stands; `plugs` are rectangles on its face in the same order of figures.
    """

    thing: str
    low: float
    high: float
    bottom: float
    top: float
    near: float
    under: bool
    plugs: tuple[tuple[float, float, float, float], ...]


def faces(deck: Deck, placement: Placement, plugs: PlugBodies, view: str) -> tuple[Face, ...]:
    """The things of a deck whose height is stated."""
    found = [
        _face(deck, body, [plug for plug in plugs.all if plug.thing == body.thing], view)
        for body in placement.outlines.values()
        if body.deck == deck.name
    ]
    return tuple(sorted((face for face in found if face is not None), key=lambda face: (face.near, face.thing)))


def visible(face: Face, all_faces: tuple[Face, ...]) -> tuple[float, float] | None:
    """From where to where along the edge the top of a face is best seen: its longest stretch before which nothing stands."""
    step = (face.high - face.low) / _PARTS
    level = face.top - (face.top - face.bottom) * 0.1
    hiding = [other for other in all_faces if other.near > face.near and other.bottom < level < other.top]
    best: list[float] = []
    run: list[float] = []
    for part in range(_PARTS):
        at = face.low + (part + 0.5) * step
        run = [] if any(other.low < at < other.high for other in hiding) else [*run, at]
        best = max(best, run, key=len)
    return (best[0], best[-1]) if best else None


_PARTS = 24


def _face(deck: Deck, body: Outline, plugs: list[PlugBody], view: str) -> Face | None:
    if body.height_mm is None:
        return None
    base = body.raised_mm
    if body.under:
        base = -(deck.thickness_mm.value if deck.thickness_mm is not None else 0.0) - body.height_mm
    area = body.area
    low, high, near = (
        (area.x_mm, area.right_mm, area.rear_mm) if view == REAR else (area.y_mm, area.rear_mm, area.right_mm)
    )
    towards = (0, 1) if view == REAR else (1, 0)
    seen = (plug for plug in plugs if (round(plug.point.dx), round(plug.point.dy)) == towards)
    drawn = tuple(rect for plug in seen if (rect := _plug(plug, base, view)) is not None)
    return Face(body.thing, low, high, base, base + body.height_mm, near, body.under, drawn)


def _plug(plug: PlugBody, base: float, view: str) -> tuple[float, float, float, float] | None:
    if plug.point.height_mm is None or plug.height_mm is None:
        return None
    middle = plug.point.x_mm if view == REAR else plug.point.y_mm
    height = base + plug.point.height_mm
    half, rise = plug.width_mm / 2, plug.height_mm / 2
    return middle - half, middle + half, height - rise, height + rise
