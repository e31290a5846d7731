"""Strips across a thing's base and its place -> where they lie on the deck, what they share with its tape, and their corners in words.

A piece of a thing that stands askew is given by its own width and depth about its own middle: turn it by the skew.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, radians, tan

from rigc.analysis.deck.spot_on_thing import skewed
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.deck import Place
from rigc.model.geometry.polygon import Polygon, Spot, turned
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.stock import Strip


def laid(local: tuple[Rectangle, ...], size_mm: tuple[float, float], place: Place) -> tuple[Rectangle, ...]:
    """Strips as they lie on the base, for a thing of that width and depth, where they are on the deck."""
    pieces = tuple(piece.turned_within(*size_mm, place.turned) for piece in local)
    if not place.skew_deg:
        return tuple(piece.moved(place.x_mm, place.y_mm) for piece in pieces)
    wide, deep = reversed(size_mm) if place.turned in (90, 270) else size_mm
    around = skewed(wide, deep, place.skew_deg)
    return tuple(_about(around.at(middle(piece), place), piece.width_mm, piece.depth_mm) for piece in pieces)


def middle(piece: Rectangle) -> Spot:
    """The middle of a piece, which turning it does not move."""
    return piece.x_mm + piece.width_mm / 2, piece.y_mm + piece.depth_mm / 2


def shared_mm2(piece: Rectangle, skew_deg: float, ground: Rectangle) -> float:
    """The area that a piece, turned by the skew about its middle, shares with a tape or a plate."""
    if not skew_deg:
        return piece.shared_mm2(ground)
    x, y = middle(piece)
    corners = tuple((x + dx, y + dy) for dx, dy in (turned((cx - x, cy - y), skew_deg) for cx, cy in piece.corners))
    for way, limit in (
        ((1.0, 0.0), ground.x_mm),
        ((-1.0, 0.0), -ground.right_mm),
        ((0.0, 1.0), ground.y_mm),
        ((0.0, -1.0), -ground.rear_mm),
    ):
        corners = _beyond(corners, way, limit)
    return _area(corners)


def twins(
    pieces: tuple[Rectangle, ...], tapes: tuple[Rectangle, ...], strip: Strip, place: Place
) -> tuple[Rectangle, ...]:
    """The deck's pieces on rails: none where the tape is the partner; else, per strip and tape met, a piece as long as the
    tape is wide (along the rail, under a thing turned by a quarter, the strip's own twin).

    Under a thing askew they turn with it, long enough to be trimmed flush with both edges of the tape.
    """
    if strip.mates != "itself":
        return ()
    met = ((piece, tape) for piece in pieces for tape in tapes if shared_mm2(piece, place.skew_deg, tape) > 0)
    if place.turned in (90, 270):
        return tuple(piece for piece, _ in met)
    return tuple(_twin(piece, tape, place.skew_deg) for piece, tape in met)


def _twin(piece: Rectangle, tape: Rectangle, skew_deg: float) -> Rectangle:
    if not skew_deg:
        return Rectangle(piece.x_mm, tape.y_mm, piece.width_mm, tape.depth_mm)
    skew = radians(skew_deg)
    (x, y), across = middle(piece), tape.y_mm + tape.depth_mm / 2
    long_mm = tape.depth_mm / cos(skew) + piece.width_mm * abs(tan(skew))
    return _about((x - (across - y) * tan(skew), across), piece.width_mm, long_mm)


def _about(spot: Spot, width_mm: float, depth_mm: float) -> Rectangle:
    return Rectangle(spot[0] - width_mm / 2, spot[1] - depth_mm / 2, width_mm, depth_mm)


def _beyond(corners: Polygon, way: Spot, limit: float) -> Polygon:
    """The part of a convex polygon that lies at least so far along a direction."""
    kept: list[Spot] = []
    for at, spot in enumerate(corners):
        last = corners[at - 1]
        here, there = (each[0] * way[0] + each[1] * way[1] - limit for each in (spot, last))
        if (here > 0) != (there > 0):
            share = there / (there - here)
            kept.append((last[0] + (spot[0] - last[0]) * share, last[1] + (spot[1] - last[1]) * share))
        if here > 0:
            kept.append(spot)
    return tuple(kept)


def _area(corners: Polygon) -> float:
    return sum(corners[at - 1][0] * spot[1] - spot[0] * corners[at - 1][1] for at, spot in enumerate(corners)) / 2


def on_deck(pieces: tuple[Rectangle, ...], skew_deg: float, tapes_met: int | None) -> str:
    """The deck's pieces by size, each with its front-left corner; with its middle and angle where they lie askew. Where there are
    none, the tape of so many rails holds."""
    if not pieces:
        return f"the tape of {tapes_met or 0} rail{'' if tapes_met == 1 else 's'}"
    sizes: dict[tuple[float, float], list[Rectangle]] = {}
    for piece in pieces:
        sizes.setdefault((piece.width_mm, piece.depth_mm), []).append(piece)
    at = f"turned {skew_deg:g}°, middles at" if skew_deg else "at"
    return "; ".join(
        f"{len(alike)} of {nearest_tenth(width)} × {nearest_tenth(depth)} {at} {_spots(spots(alike, skew_deg))}"
        for (width, depth), alike in sizes.items()
    )


def spots(pieces: Iterable[Rectangle], skew_deg: float) -> list[Spot]:
    """What a piece is laid by: its front-left corner, or its middle where it lies askew."""
    return [middle(each) if skew_deg else (each.x_mm, each.y_mm) for each in pieces]


def _spots(found: list[Spot]) -> str:
    """What all have in common is said once."""
    across, along = (list(map(nearest_tenth, values)) for values in zip(*found, strict=True))
    if len(set(across)) == 1 or len(set(along)) == 1:
        return f"x {', '.join(dict.fromkeys(across))} · y {', '.join(dict.fromkeys(along))}"
    return " and ".join(f"x {x} · y {y}" for x, y in zip(across, along, strict=True))
