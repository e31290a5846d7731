"""PlugClash: the plugs and bodies on the decks -> which of them stand in each other's way, and by how much; a base lies on the deck's parts
at its jack's side and level."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import JackPoint, Outline, Placement
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody, UnknownPlug
from rigc.analysis.leads.plugs.tier_fronts import on_tier, tier_fronts
from rigc.facts import clearance
from rigc.model.deck import Deck
from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.polygon import Polygon, before, reach
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


def solid_deck(rig: Rig, point: JackPoint) -> Iterator[Rectangle]:
    """The plate, or its rails; for a jack of a thing on a tier, that tier. None where the deck's size is not stated."""
    deck = rig.decks.get(point.deck or "")
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return
    width = deck.width_mm.value
    if point.raised_mm:
        stretches = [(t.front_mm, t.rear_mm) for t in deck.tiers if t.raised_mm == point.raised_mm]
    else:
        stretches = _plain(deck, deck.depth_mm.value)
    for front, rear in stretches:
        yield Rectangle(0.0, front, width, rear - front)


def _plain(deck: Deck, depth_mm: float) -> list[tuple[float, float]]:
    if not deck.rails:
        return [(0.0, depth_mm)]
    return [(rail.front_mm, rail.rear_mm) for rail in deck.rails]


GAP_MM = clearance.PLUG_GAP_MM.value
_HAIR_MM = 1e-6  # figures that differ by less are equal


class SideBySide(Record):
    """Two plugs on one face of one thing whose jacks are nearer than half their widths together, in mm."""

    one: PlugBody
    other: PlugBody
    pitch_mm: float
    needed_mm: float


class PlugMeeting(Record):
    """A plug that meets a plug of another thing (`other`), or another thing's body (`other` is None).

    `room_mm` is what there is between the faces (or before the body), `needed_mm` what the plugs need; `stagger_mm` is how
    far to shift one of the things sideways so that both pass, None where that does not help. Of plugs that do not face
    each other, `room_mm` is 0 and `needed_mm` how far to part them.
    """

    plug: PlugBody
    thing: str
    other: PlugBody | None
    room_mm: float
    needed_mm: float
    stagger_mm: float | None = None

    @property
    def things(self) -> tuple[str, str]:
        """The two things, in the order of the alphabet."""
        first, second = sorted((self.plug.thing, self.thing))
        return first, second


class IntoDeck(Record):
    """A plug that is taller than its jack is high: so many mm of it would be in the deck (or the tier, or the rail) there."""

    plug: PlugBody
    into_mm: float


class PlugClash(Record):
    """All clashes; `unjudged` holds jacks whose plugs are in the way seen from above, while a height is not known."""

    side_by_side: tuple[SideBySide, ...]
    meetings: tuple[PlugMeeting, ...]
    into_deck: tuple[IntoDeck, ...]
    unjudged: tuple[UnknownPlug, ...]


def plug_clash(rig: Rig, plugs: PlugBodies, placement: Placement) -> PlugClash:
    """Compares all plugs of one deck and side with each other and with the bodies there, sideways and in height."""
    pairs, at_bodies = _near(plugs.all, (*placement.outlines.values(), *tier_fronts(rig)))
    beside = [(found, _level(one.levels_mm, other.levels_mm)) for one, other in pairs for found in _beside(one, other)]
    meeting = [
        (found, _level(one.levels_mm, other.levels_mm)) for one, other in pairs for found in _meeting(one, other)
    ]
    met = {end for found, level in meeting if level is not False for end in _ends(found)}
    blocked = [
        (found, _level(plug.levels_mm, _levels(body)))
        for plug, body in at_bodies
        if (plug.port, body.thing) not in met and not on_tier(plug, body)
        for found in _blocked(plug, body)
    ]
    sunk = [(plug, _into_deck(rig, plug)) for plug in plugs.all]
    return PlugClash(
        tuple(found for found, level in beside if level),
        tuple(found for found, level in (*meeting, *blocked) if level),
        tuple(IntoDeck(plug, into) for plug, into in sunk if into is not None and into > _HAIR_MM),
        tuple(
            dict.fromkeys(
                [_unjudged(found.one, found.other, None) for found, level in beside if level is None]
                + [
                    _unjudged(found.plug, found.other, placement.outline(found.thing))
                    for found, level in (*meeting, *blocked)
                    if level is None
                ]
                + [_unjudged(plug, None, None) for plug, into in sunk if into is None]
            )
        ),
    )


def half_widths(one: PlugBody, other: PlugBody) -> float:
    """The least distance of two plugs' middles in mm: half of both widths."""
    return (one.width_mm + other.width_mm) / 2


def _near(
    plugs: tuple[PlugBody, ...], bodies: tuple[Outline, ...]
) -> tuple[list[tuple[PlugBody, PlugBody]], list[tuple[PlugBody, Outline]]]:
    """The plugs that are near each other, and those that are near the body of another thing."""
    near = neighbours([*(plug.room(plug.bend_mm) for plug in plugs), *(body.area for body in bodies)], GAP_MM * 2)
    count = len(plugs)
    pairs = ((plugs[one], plugs[other]) for one, other in near if other < count)
    facing = ((plugs[one], bodies[other - count]) for one, other in near if one < count <= other)
    return (
        [(one, other) for one, other in pairs if _together(one.point, other.point)],
        [(plug, body) for plug, body in facing if plug.thing != body.thing and _together(plug.point, body)],
    )


def _together(one: JackPoint, other: JackPoint | Outline) -> bool:
    return one.deck == other.deck and one.under == other.under


def _level(one: tuple[float, float] | None, other: tuple[float, float] | None) -> bool | None:
    """Whether two stretches of height overlap; None where one is not known."""
    if one is None or other is None:
        return None
    return min(one[1], other[1]) - max(one[0], other[0]) > _HAIR_MM


def _levels(body: Outline) -> tuple[float, float] | None:
    return None if body.height_mm is None else (body.raised_mm, body.raised_mm + body.height_mm)


def _unjudged(plug: PlugBody, other: PlugBody | None, body: Outline | None) -> UnknownPlug:
    """The first height that is missing: of the plug's jack, of the other's, or of the body before it."""
    for one in (plug, other):
        if one is not None and one.levels_mm is None:
            missing = (
                f"the height of '{one.port}'" if one.point.height_mm is None else f"the height of the plug '{one.plug}'"
            )
            return UnknownPlug(one.port, missing, one.span)
    return UnknownPlug(
        plug.port, f"the height of '{body.thing}'" if body is not None else f"a height at '{plug.port}'", plug.span
    )


def _aside(one: JackPoint, other: JackPoint) -> float:
    """How far two jacks lie apart along the face of the first."""
    return abs((one.x_mm - other.x_mm) * one.dy - (one.y_mm - other.y_mm) * one.dx)


def _beside(one: PlugBody, other: PlugBody) -> Iterator[SideBySide]:
    same_face = (one.point.dx, one.point.dy) == (other.point.dx, other.point.dy)
    if one.thing != other.thing or not same_face:
        return
    pitch, needed = _aside(one.point, other.point), half_widths(one, other)
    if needed - pitch > _HAIR_MM:
        yield SideBySide(one, other, pitch, needed)


def _meeting(one: PlugBody, other: PlugBody) -> Iterator[PlugMeeting]:
    here, there = one.point, other.point
    if (here.dx, here.dy) == (-there.dx, -there.dy):
        if one.thing != other.thing:
            yield from _facing(one, other)
    elif one.thing != other.thing or (here.dx, here.dy) != (there.dx, there.dy):
        into = _into(one, other)
        if into > _HAIR_MM:
            yield PlugMeeting(one, other.thing, other, 0.0, into)


def _into(one: PlugBody, other: PlugBody) -> float:
    """How far two plugs, each with its cable's bend, reach into each other, seen from above."""
    if one.askew or other.askew:
        return reach(one.corners(one.bend_mm), other.corners(other.bend_mm))
    return min(one.room(one.bend_mm).overlap(other.room(other.bend_mm)))


def _facing(one: PlugBody, other: PlugBody) -> Iterator[PlugMeeting]:
    here, there = one.point, other.point
    gap = (there.x_mm - here.x_mm) * here.dx + (there.y_mm - here.y_mm) * here.dy
    free = half_widths(one, other) + GAP_MM - _aside(here, there)
    needed = one.needs_mm + other.needs_mm + GAP_MM
    if gap < 0 or free <= _HAIR_MM or needed - gap <= _HAIR_MM:
        return
    passes = gap >= max(one.needs_mm, other.needs_mm) + GAP_MM
    yield PlugMeeting(one, other.thing, other, gap, needed, free if passes else None)


def _blocked(plug: PlugBody, body: Outline) -> Iterator[PlugMeeting]:
    """A plug, its cable's bend and the air before it, against a body: what is free before it is seen along the plug's width."""
    further_mm = plug.bend_mm + GAP_MM
    corners = body.corners if body.askew else None
    if _met(plug, further_mm, body.area, corners) <= _HAIR_MM:
        return
    point = plug.point
    edge = before(body.corners, (point.x_mm, point.y_mm), (point.dx, point.dy), plug.width_mm / 2)
    yield PlugMeeting(plug, body.thing, None, max(edge or 0.0, 0.0), plug.needs_mm + GAP_MM)


def _into_deck(rig: Rig, plug: PlugBody) -> float | None:
    """How far a plug reaches below the level on which its thing's base lies, where deck is there; None for want of a height.

    The base is taken to lie on the deck itself: what strip and feet lift it by is not stated anywhere.
    """
    levels = plug.levels_mm
    into = None if levels is None else max(plug.point.raised_mm - levels[0], 0.0)
    if into == 0.0:
        return into
    over = any(_met(plug, 0.0, solid) > _HAIR_MM for solid in solid_deck(rig, plug.point))
    return into if over else 0.0


def _met(plug: PlugBody, further_mm: float, area: Rectangle, corners: Polygon | None = None) -> float:
    """How far a plug and what it needs before it reach into a rectangle, or into a body askew with these `corners`."""
    if plug.askew or corners is not None:
        return reach(plug.corners(further_mm), area.corners if corners is None else corners)
    return min(plug.room(further_mm).overlap(area))


def _ends(found: PlugMeeting) -> tuple[tuple[Port, str], ...]:
    """Each plug of a meeting with the thing that it meets."""
    if found.other is None:
        return ((found.plug.port, found.thing),)
    return (found.plug.port, found.thing), (found.other.port, found.plug.thing)


COMPUTE = plug_clash
