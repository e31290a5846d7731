"""Clashes of plugs -> a large drawing of each: the plugs in their jacks, what there is, what is needed."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.plugs.plug_bodies import PlugBody
from rigc.analysis.leads.plugs.plug_clash import PlugClash, PlugMeeting, SideBySide
from rigc.model.geometry.rectangle import Rectangle
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.view import View, boxed, fitting_scale
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import led_from, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, Label, Shape

_SIDE, _AROUND_MM = 110.0, 12.0  # the largest picture on paper; what is shown around the plugs


class Clash(Record):
    """One clash: its plugs, the things it is about, and its figures in words."""

    name: str
    plugs: tuple[PlugBody, ...]
    things: tuple[str, ...]
    figures: tuple[str, ...]


def clash_details(clash: PlugClash, placement: Placement, deck: str, kept: Kept = NOTHING_KEPT) -> tuple[Drawing, ...]:
    """A drawing for each thing whose own plugs collide (its worst pair) and for each plug that meets another thing."""
    worst: dict[str, SideBySide] = {}
    for pair in clash.side_by_side:
        known = worst.get(pair.one.thing)
        if known is None or pair.needed_mm - pair.pitch_mm > known.needed_mm - known.pitch_mm:
            worst[pair.one.thing] = pair
    found = [_beside(pair) for pair in worst.values()] + [_meeting(each) for each in clash.meetings]
    here = [each for each in found if each.plugs[0].point.deck == deck]
    return tuple(_drawing(each, placement, deck, number, kept) for number, each in enumerate(here, 1))


def _beside(pair: SideBySide) -> Clash:
    short = pair.needed_mm - pair.pitch_mm
    figures = (
        f"between the jacks {pair.pitch_mm:g} mm",
        f"needed ({pair.one.width_mm:g} + {pair.other.width_mm:g})/2 = {pair.needed_mm:g} mm",
        f"short by {short:g} mm",
    )
    return Clash(f"{pair.one.port} and {pair.other.port}", (pair.one, pair.other), (pair.one.thing,), figures)


def _meeting(found: PlugMeeting) -> Clash:
    plugs = (found.plug,) if found.other is None else (found.plug, found.other)
    figures = [
        f"room {found.room_mm:g} mm",
        f"needed {found.needed_mm:g} mm",
        f"short by {found.needed_mm - found.room_mm:g} mm",
    ]
    if found.stagger_mm is not None:
        figures.append(f"or stagger by {found.stagger_mm:g} mm")
    other = found.thing if found.other is None else str(found.other.port)
    return Clash(f"{found.plug.port} and {other}", plugs, (found.plug.thing, found.thing), tuple(figures))


def _drawing(clash: Clash, placement: Placement, deck: str, number: int, kept: Kept) -> Drawing:
    window = _window([plug.room() for plug in clash.plugs])
    scale = fitting_scale(window.width_mm, window.depth_mm, _SIDE, _SIDE)
    view = View(scale, 4 - window.x_mm / scale, 4, 0, window.rear_mm)
    frame = view.room(window)
    words = frame.right + 6
    lines = (*(f"{plug.port}: {plug.plug}" for plug in clash.plugs), *clash.figures)
    width = words + max(text_width(line, LETTERS, strong=True) for line in lines) + 3
    height = max(frame.bottom + 4, 8 + 5.5 * len(lines))
    labels = [Label(words, 9 + 5.5 * at, line, strong="short" in line) for at, line in enumerate(lines)]
    return Drawing(
        name=f"clash-{deck}-{number}",
        title=f"Clash of plugs: {clash.name}",
        desc=f"{clash.name}, from above: {'; '.join(clash.figures)}.",
        width_mm=round(width, 1),
        height_mm=round(height, 1),
        shapes=(*_picture(clash, placement, view, window, frame, kept), *labels),
        scale=scale,
    )


def _window(rooms: list[Rectangle]) -> Rectangle:
    left, front = min(room.x_mm for room in rooms), min(room.y_mm for room in rooms)
    right, rear = max(room.right_mm for room in rooms), max(room.rear_mm for room in rooms)
    wide, deep = right - left + 2 * _AROUND_MM, rear - front + 2 * _AROUND_MM
    return Rectangle(left - _AROUND_MM, front - _AROUND_MM, wide, deep)


def _picture(clash: Clash, placement: Placement, view: View, window: Rectangle, frame: Room, kept: Kept) -> list[Shape]:
    """Bodies as far as the window shows them, the plugs over them, all within a frame."""
    shapes: list[Shape] = []
    named: list[tuple[str, Wish]] = []
    for thing in dict.fromkeys(clash.things):
        body = placement.outline(thing)
        seen = _shared(body.area, window) if body is not None else None
        if seen is not None:
            shapes.append(boxed(view.room(seen), width_mm=THICK, fill="tint"))
            named.append((thing, named_in(view.room(seen), thing)))
    for plug, fill in zip(clash.plugs, ("hatch", "cross-hatch"), strict=False):
        here = view.room(plug.room())
        shapes.append(boxed(here, width_mm=THICK, fill=fill))
        named.append(
            (plug.port.jack, led_from(((here.left + here.right) / 2, (here.top + here.bottom) / 2), plug.port.jack))
        )
    shapes.append(boxed(frame, "grey", width_mm=HAIR))
    ground = Ground(frame, kept)
    ground.drawn(shapes)
    found, _ = labelled(ground, named)  # the title names all of them
    return [*shapes, *found]


def _shared(area: Rectangle, window: Rectangle) -> Rectangle | None:
    left, front = max(area.x_mm, window.x_mm), max(area.y_mm, window.y_mm)
    right, rear = min(area.right_mm, window.right_mm), min(area.rear_mm, window.rear_mm)
    return Rectangle(left, front, right - left, rear - front) if left < right and front < rear else None
