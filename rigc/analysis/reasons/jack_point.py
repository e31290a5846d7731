"""Where a thing and its jacks are on the deck, and how high: `plumb.place`, `plumb.in.point`, `plumb.in.height`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.lead_plugs import socket
from rigc.analysis.computations.placement import JackPoint, Outline, Placement
from rigc.analysis.reasons.inputs import known, placed, stands, stated
from rigc.diagnostics.figures import plain
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import PanelJack, Thing
from rigc.traced.reason import ARITHMETIC, Input, Reason


def jack_point(rig: Rig, placement: Placement) -> Iterator[Reason]:
    """One reason for each placed thing, and two for each jack of it."""
    for name, outline in placement.outlines.items():
        yield _place(rig, name, outline)
    for port, point in placement.points.items():
        yield _point(rig, placement, port, point)
        if point.height_mm is not None and not point.panel:
            yield _height(rig, port, point)


def _place(rig: Rig, name: str, outline: Outline) -> Reason:
    turned = rig.places[name].turned
    size = f"{plain(outline.width_mm)} × {plain(outline.depth_mm)}"
    where = f"at {plain(outline.x_mm)}, {plain(outline.y_mm)}"
    skew = rig.places[name].skew_deg
    how = f"turned by {turned}°: width and depth change places" if turned in (90, 270) else f"turned by {turned}°"
    how += f", and {plain(skew)}° askew: the rectangle around it" if skew else ""
    return Reason(
        f"{name}.place",
        f"{size} {where}",
        "mm",
        f"{size} {where}, {how}",
        (stands(rig.places[name]), *_body(rig, name)),
        "a place is the front-left corner of the outline after turning",
        ARITHMETIC,
    )


def _point(rig: Rig, placement: Placement, port: Port, point: JackPoint) -> Reason:
    value = f"{plain(point.x_mm)}, {plain(point.y_mm)}"
    jack, outline = socket(rig, port), placement.outline(port.thing)
    if outline is None:
        stated_at = (placed(str(port), value, jack.span if isinstance(jack, PanelJack) else None, "mm"),)
        return Reason(
            f"{port}.point",
            value,
            "mm",
            f"{value}, as stated",
            stated_at,
            "a panel's jacks lie on the deck",
            ARITHMETIC,
        )
    corner = (outline.x_mm, outline.y_mm)
    sums = [f"{plain(at)} + {plain(value - at)}" for at, value in zip(corner, (point.x_mm, point.y_mm), strict=True)]
    side = jack.side if jack is not None and jack.side is not None else ""
    inputs = (
        stands(rig.places[port.thing]),
        *_body(rig, port.thing),
        *known(f"{port} on the {side} side", jack.offset_mm if jack is not None else None),
    )
    rule = "the outline's front-left corner and the jack's place in it, after turning"
    return Reason(f"{port}.point", value, "mm", f"{sums[0]}, {sums[1]} = {value}", inputs, rule, ARITHMETIC)


def _height(rig: Rig, port: Port, point: JackPoint) -> Reason:
    assert point.height_mm is not None
    jack, total = socket(rig, port), plain(point.height_mm + point.raised_mm)
    inputs: tuple[Input, ...] = (stated(f"{port} up", jack.height_mm if jack is not None else None),)
    if point.raised_mm:
        inputs += (stands(rig.places[port.thing]),)
    return Reason(
        f"{port}.height",
        total,
        "mm",
        f"{plain(point.height_mm)} + {plain(point.raised_mm)} = {total}" if point.raised_mm else f"{total}, as stated",
        inputs,
        "height over the deck: the jack's over the base of its unit without feet, and that of the tier",
        ARITHMETIC,
    )


def _body(rig: Rig, name: str) -> tuple[Input, ...]:
    thing = rig.things[name]
    assert isinstance(thing, Thing)
    return (*known(f"{name} width", thing.width_mm), *known(f"{name} depth", thing.depth_mm))


REASONS = jack_point
