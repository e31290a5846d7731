"""A rig, its leads and what shall be placed -> the board that a search works on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import ceil, floor
from types import MappingProxyType

from rigc.analysis.deck.feet import spots_pressed
from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.analysis.deck.placement import Placement, laid_out
from rigc.analysis.laying.at_hand import Handled, handled, spots_at_hand
from rigc.analysis.laying.choices.standing import hangs, may_hang, needs_top
from rigc.analysis.laying.hold import bands, grip, tapes
from rigc.analysis.laying.partings import partings
from rigc.analysis.laying.room_in_case import rearmost
from rigc.analysis.laying.search.board import Area, Board, End, Item, Link, Shape, Socket, Spot, Tier, Wish
from rigc.analysis.laying.use import switches_presets, trodden, uses
from rigc.analysis.laying.weights import share_of, weights
from rigc.analysis.laying.wishes.wishes_of_rig import heel_mm, side_wished, wishes_for
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.deck_boxes import cost_beneath
from rigc.analysis.leads.lengths.lead_ends import LeadEnd, lead_ends, tenths
from rigc.analysis.leads.plugs.plug_bodies import PlugBody, plug_bodies
from rigc.facts import clearance, foot, laying
from rigc.model.deck import Deck, LaterRoom, Place
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Area as Room
from rigc.model.things import Thing, Unit

_UNKNOWN = 100_000  # where a height is not stated, everything is in the way
_QUARTERS = (0, 90, 180, 270)
_SAME = 1e-6  # of a tenth of a millimetre: no more than floats err

Sides = Mapping[str, bool]
"""Things that are on another side of the deck than is usual, by name: whether below it."""


class _Laid:
    """All things of a rig laid at one corner in one turn: what their jacks and plugs are like there."""

    def __init__(self, rig: Rig, leads: Leads, names: tuple[str, ...], under: frozenset[str], turned: int) -> None:
        deck = None if rig.deck is None else rig.deck.name
        spots = {name: Place(name, 0.0, 0.0, turned, name in under, deck, None, None, "", rig.end) for name in names}
        self.rig: Rig = rig.replace(places=spots)
        self.placement: Placement = laid_out(self.rig)
        bodies = plug_bodies(self.rig, leads, self.placement)
        self.plugs: dict[Port, PlugBody] = {plug.port: plug for plug in bodies.all}
        self.ends: dict[str, tuple[LeadEnd, LeadEnd]] = {}
        for lead in leads.all:
            ends = lead_ends(self.rig, self.placement, lead)
            if not lead.stage and isinstance(ends, tuple):
                self.ends[lead.mark] = ends


def board_of(
    rig: Rig,
    deck: Deck,
    leads: Leads,
    things: tuple[Thing, ...],
    step_mm: float = 1.0,
    rooms: tuple[LaterRoom, ...] = (),
    sides: Sides = MappingProxyType({}),
) -> Board:
    """The board with these things free, and all that has a stated place on this deck fixed. Their bodies are known. Rooms without a
    place are its last items."""
    assert deck.width_mm is not None and deck.depth_mm is not None
    fixed = {name: place for name, place in rig.places.items() if (place.deck or deck.name) == deck.name}
    known = (thing for name, thing in rig.things.items() if name in fixed)  # in whatever order their places are written
    standing = [thing for thing in known if isinstance(thing, Thing) and thing.width_mm is not None]
    every = (*standing, *things)
    under = frozenset(thing.name for thing in every if _under(rig, thing, deck, fixed, sides))
    names = tuple(thing.name for thing in every)
    laid = {turned: _Laid(rig, leads, names, under, turned) for turned in _QUARTERS}
    links = [lead for lead in leads.all if lead.mark in laid[0].ends]
    weighed = weights(rig)
    worth = uses(rig, weighed)
    wished = wishes_for(rig, deck, names, under, frozenset(thing.name for thing in things))
    opened = frozenset((*(thing.name for thing in things), *(name for name, place in fixed.items() if place.chosen)))
    hands = handled(rig, leads)
    in_front = tuple(_in_front(rig, deck, things, names))
    front = frozenset(thing.name for thing, _ in in_front)
    spacing = foot.SWITCH_SPACING_MM[rig.head.rig_class or "home"]
    off = not all(_is_whole(at) for thing in every for spot in thing.switches for at in (spot.x_mm, spot.y_mm))
    return Board(
        width=tenths(deck.width_mm.value),
        depth=tenths(deck.depth_mm.value),
        thickness=tenths(deck.thickness_mm.value) if deck.thickness_mm is not None else 0,
        lines=tuple(map(tenths, deck.drops_mm)),
        items=(
            *(
                _item(rig, deck, thing, fixed, under, laid, links, worth.get(thing.name, 0), hands, front)
                for thing in every
            ),
            *(_open_room(number, room, -weighed["behind"]) for number, room in enumerate(rooms, start=1)),
        ),
        links=tuple(_link(rig, lead, laid[0], names, links, weighed, opened) for lead in links),
        wishes=(*(wish for _, wish in wished), *(wish for _, wish in in_front)),
        kept_free=tuple(map(_area, deck.keep_outs)),
        reserved=(*map(_area, rig.reserved_on(deck)), *_heel(deck)),
        tiers=tuple(Tier(tenths(each.front_mm), tenths(each.rear_mm), tenths(each.raised_mm)) for each in deck.tiers),
        tapes=tapes(deck, False),
        tapes_below=tapes(deck, True),
        aside=tenths(spacing[0].value) + off,
        behind=tenths(spacing[1].value) + off,
        apart=tenths(foot.LIFT_OUT_MM.value),
        air=tenths(clearance.PLUG_GAP_MM.value),
        step=tenths(step_mm),
        passing=tenths(laying.BROKEN_MM.value) * round(laying.AUDIO_SHARE.value),
        unbalanced=weighed["balance"],
        line=tenths(weighed["front lines"]),
        gap=weighed["gaps"],
        centring=weighed["centring"],
        shoe=tenths(foot.HALF_SHOE_MM.value),
        shoe_share=weighed["beside treadle"],
        crossing=tenths(weighed["crossings"]),
        spared=sum(_size(thing) for thing in every if thing.name not in under and may_hang(thing, deck)),
        on_deck=weighed["on deck"],
        plugs=len(
            {port for lead in leads.all for port, own in zip((lead.start, lead.end), lead.chosen, strict=True) if own}
        ),
        plug=tenths(weighed["other plugs"]),
        knob=tenths(foot.KNOB_MM.value),
        partings=partings(every, under),
        feet=tenths(deck.feet_inset_mm.value) if deck.feet_inset_mm is not None else 0,
        grams=round(1000 * deck.mass_kg.value) if deck.mass_kg is not None else 0,
        weighed=None not in (deck.mass_kg, deck.feet_inset_mm, *(thing.mass_kg for thing in every)),
    )


def _under(rig: Rig, thing: Thing, deck: Deck, fixed: dict[str, Place], sides: Sides) -> bool:
    """As stated; else as it is chosen, else as wished where the room below takes it, else where it belongs."""
    if thing.name in fixed:
        return fixed[thing.name].under
    if thing.name in sides:
        return sides[thing.name]
    wished = side_wished(rig, thing, deck)
    return hangs(thing, deck) if wished is None else wished


def _size(thing: Thing) -> int:
    """Its width and depth, one added to the other."""
    return sum(tenths(each.value) for each in (thing.width_mm, thing.depth_mm) if each is not None)


def _open_room(number: int, room: LaterRoom, use: int) -> Item:
    """Nobody knows what will stand there, so it is kept free up to any height; no foot comes down there yet, so it goes to the rear."""
    shape = Shape(0, tenths(room.width_mm), tenths(room.depth_mm))
    return Item(f"reserve {number}", (shape,), _UNKNOWN, use=use)


def _item(
    rig: Rig,
    deck: Deck,
    thing: Thing,
    fixed: dict[str, Place],
    under: frozenset[str],
    laid: dict[int, _Laid],
    links: list[Lead],
    use: int,
    hands: tuple[Handled, ...],
    front: frozenset[str],
) -> Item:
    place = fixed.get(thing.name)
    turns = (place.turned,) if place is not None else (0,) if needs_top(thing) else _QUARTERS
    held = grip(rig, thing) if tapes(deck, thing.name in under) else 0
    return Item(
        thing.name,
        tuple(_shape(thing, turned, laid[turned], links, hands, bool(held)) for turned in turns),
        tenths(thing.height_mm.value) if thing.height_mm is not None else _UNKNOWN,
        thing.name in under,
        None if place is None else (tenths(place.x_mm), tenths(place.y_mm)),
        use,
        None if thing.mass_kg is None else round(1000 * thing.mass_kg.value),
        held,
        cost_beneath(deck, thing.height_mm.value) if thing.name in under and thing.height_mm is not None else None,
        () if thing.name in under else rearmost(rig, deck, thing),
        tenths(heel_mm(deck) + laying.EDGE_MM.value) if thing.name in front else None,
        thing.treadle_mm is not None and not worked_by_hand(thing),
    )


def _shape(thing: Thing, turned: int, laid: _Laid, links: list[Lead], hands: tuple[Handled, ...], held: bool) -> Shape:
    outline = laid.placement.outlines[thing.name]
    switches = () if worked_by_hand(thing) else thing.switches
    knobs = thing.knobs if isinstance(thing, Unit) else ()
    pressed = spots_pressed(thing, laid.rig.places[thing.name]) if isinstance(thing, Unit) else ()
    return Shape(
        turned,
        _outward(outline.width_mm),
        _outward(outline.depth_mm),
        tuple(_socket(laid, port, ends) for port, ends in _sockets(thing.name, laid, links).items()),
        tuple(_turned_spot(thing, spot.x_mm, spot.y_mm, turned) for spot in switches),
        tuple(_turned_spot(thing, spot.x_mm, spot.y_mm, turned) for spot in knobs),
        tuple((tenths(x), tenths(y)) for x, y in pressed),
        tuple(_air(thing, side, turned) for side in thing.vents),
        tuple((tenths(x), tenths(y), each.share) for x, y, each in spots_at_hand(laid.placement, hands, thing.name)),
        bands(laid.rig, thing, turned) if held else (),
    )


def _air(thing: Thing, side: str, turned: int) -> Area:
    """The room before the vents of a side that must stay free, seen from the corner of the turned thing."""
    assert thing.width_mm is not None and thing.depth_mm is not None
    width, depth, air = thing.width_mm.value, thing.depth_mm.value, foot.VENT_MM.value
    rooms = {
        "left": Rectangle(-air, 0.0, air, depth),
        "right": Rectangle(width, 0.0, air, depth),
        "front": Rectangle(0.0, -air, width, air),
        "rear": Rectangle(0.0, depth, width, air),
    }
    room = rooms[side].turned_within(width, depth, turned)
    return tenths(room.x_mm), tenths(room.y_mm), tenths(room.right_mm), tenths(room.rear_mm)


def _sockets(name: str, laid: _Laid, links: list[Lead]) -> dict[Port, LeadEnd | None]:
    """The jacks of a thing that have a lead with a route, then those that only have a plug; the same order in every turn."""
    found: dict[Port, LeadEnd | None] = {}
    for lead in links:
        for end in laid.ends[lead.mark]:
            if end.port.thing == name:
                found.setdefault(end.port, end)
    for port in laid.plugs:
        if port.thing == name:
            found.setdefault(port, None)
    return found


def _socket(laid: _Laid, port: Port, end: LeadEnd | None) -> Socket:
    plug, point = laid.plugs.get(port), laid.placement.points[port]
    dx, dy = round(point.dx), round(point.dy)
    x, y = _towards(point.x_mm, dx), _towards(point.y_mm, dy)
    beside = point.y_mm if dx else point.x_mm
    low, high = (-_UNKNOWN, _UNKNOWN) if plug is None or plug.levels_mm is None else map(tenths, plug.levels_mm)
    return Socket(
        x=x,
        y=y,
        dx=dx,
        dy=dy,
        exit=0 if end is None else abs(end.x - x) + abs(end.y - y),
        needs=0 if plug is None else _outward(plug.needs_mm),
        width=0 if plug is None else _outward(plug.width_mm) + (not _is_whole(beside)),
        low=low,
        high=high,
        above=0 if end is None else end.above or 0,
        jack=port.jack,
    )


def _outward(length_mm: float) -> int:
    """A length in tenths of a millimetre that is nowhere too short: what is stated in inches is seldom a whole number of them."""
    return tenths(length_mm) if _is_whole(length_mm) else ceil(length_mm * 10)


def _towards(at_mm: float, side: int) -> int:
    """Where a jack lies, in tenths of a millimetre: no farther in than it is, on the side to which its plug looks."""
    if not side or _is_whole(at_mm):
        return tenths(at_mm)
    return ceil(at_mm * 10) if side > 0 else floor(at_mm * 10)


def _is_whole(length_mm: float) -> bool:
    return abs(length_mm * 10 - tenths(length_mm)) < _SAME


def _turned_spot(thing: Thing, x_mm: float, y_mm: float, turned: int) -> Spot:
    assert thing.width_mm is not None and thing.depth_mm is not None
    spot = Rectangle(x_mm, y_mm, 0.0, 0.0).turned_within(thing.width_mm.value, thing.depth_mm.value, turned)
    return tenths(spot.x_mm), tenths(spot.y_mm)


def _link(
    rig: Rig,
    lead: Lead,
    laid: _Laid,
    names: tuple[str, ...],
    links: list[Lead],
    weighed: dict[str, int],
    open_things: frozenset[str],
) -> Link:
    start, end = (_end(each, laid, names, links) for each in laid.ends[lead.mark])
    audio = lead.signal == "audio"
    more = tenths(lead.slack_mm.value) if lead.slack_mm is not None else 0
    onward = audio and not any(rig.things[port.thing].loops for port in (lead.start, lead.end))
    lanes = tuple(tenths(y) for signal, y in rig.lead_wishes.lanes if signal == lead.signal)
    share = weighed["audio leads"] if audio else share_of(rig, lead.signal, weighed)
    existing = None if lead.existing_mm is None else tenths(lead.existing_mm.value)
    run, back = lead.run or "", weighed["onward"]
    joint = bool(open_things & {lead.start.thing, lead.end.thing})
    through = tuple(map(tenths, lead.through_mm))
    return Link(lead.mark, lead.signal, start, end, share, run, more, onward, lanes, existing, back, joint, through)


def _end(end: LeadEnd, laid: _Laid, names: tuple[str, ...], links: list[Lead]) -> End:
    if end.panel:
        return End(-1, 0, end.x, end.y)
    return End(names.index(end.port.thing), list(_sockets(end.port.thing, laid, links)).index(end.port))


def _in_front(rig: Rig, deck: Deck, things: tuple[Thing, ...], names: tuple[str, ...]) -> Iterator[tuple[Thing, Wish]]:
    """A foot rests on a treadle with its heel before it: nothing stands between it and the front edge, unless a row is asked for. Nor does
    anything before what switches the presets, on which a foot comes down for each, unless no foot works it."""
    asked = {hint.things[0] for hint in rig.hints if hint.kind in ("row", "reach")}
    switching = switches_presets(rig)
    for thing in things:
        switches = thing.name in switching and isinstance(thing, Unit) and trodden(thing)
        if thing.name not in asked and (thing.treadle_mm is not None or switches):
            yield thing, Wish("near_edge", (names.index(thing.name),), "front", amount=tenths(heel_mm(deck)))


def _heel(deck: Deck) -> tuple[Area, ...]:
    assert deck.width_mm is not None
    heel = tenths(heel_mm(deck))
    return ((0, 0, tenths(deck.width_mm.value), heel),) if heel else ()


def _area(room: Room) -> Area:
    return tenths(room.x_mm), tenths(room.y_mm), tenths(room.x_mm + room.width_mm), tenths(room.y_mm + room.depth_mm)
