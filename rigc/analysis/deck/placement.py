"""Places, bodies and jacks -> outlines on the decks, and every jack's point with the way it looks: `plumb.place`,
`plumb.in.point`, `plumb.in.height`."""

from __future__ import annotations

from collections.abc import Container
from functools import cached_property

from rigc.analysis.deck.crowded_places import crowded_places, own_place
from rigc.analysis.deck.same_place import place_of
from rigc.analysis.deck.spot_on_thing import skewed, spot_of
from rigc.diagnostics.figures import plain
from rigc.model.deck import Place, Tier
from rigc.model.fact import Quantity
from rigc.model.geometry.polygon import Polygon, Spot, turned
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Panel, PanelJack, Supply, Thing
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, figure
from rigc.traced.given import at_place, mentioned, stands, stated
from rigc.traced.reason import ARITHMETIC
from rigc.traced.shown import as_typed
from rigc.traced.term import Traced

_UP = as_typed("mm", 10)


class Outline(Record):
    """The room that a placed thing takes, after turning, in mm; `height_mm` is None where the source does not say.

    `raised_mm` is that of the tier it stands on, 0 on the plain deck; `under` things hang below the deck. A thing that
    stands `askew` has the corners of its body there; its x, y, width and depth are those of the rectangle around them.
    `told` is where it is; a tier, which has an outline too, is told nowhere.
    """

    thing: str
    x_mm: float
    y_mm: float
    width_mm: float
    depth_mm: float
    height_mm: float | None
    raised_mm: float
    under: bool
    deck: str | None
    askew: Polygon = ()
    told: Answer | None = None

    @cached_property
    def area(self) -> Rectangle:
        """What it covers of its deck, seen from above; of a thing that stands askew, the rectangle around it."""
        return Rectangle(self.x_mm, self.y_mm, self.width_mm, self.depth_mm)

    @property
    def corners(self) -> Polygon:
        """The corners of its body, counter-clockwise, askew or not."""
        return self.askew or self.area.corners


class JackPoint(Record):
    """Where a jack is, in mm on its deck, and the outward normal (`dx`, `dy`) of its face.

    `height_mm` counts from the base of its thing without feet, None where the source does not say; `raised_mm` is that
    of the tier, and `height` both together, in tenths of a millimetre. A jack of a panel has no face: its normal is (0, 0);
    that of a thing askew is no whole number. `told` is where it is.
    """

    x_mm: float
    y_mm: float
    height_mm: float | None
    raised_mm: float
    dx: float
    dy: float
    under: bool
    panel: bool
    deck: str | None
    height: AnyFigure
    told: Answer


class Placement(Record):
    """Outlines by thing and points by jack, in the order of declaration; `missing` names the fact that is not stated for
    each thing (`plumb`) and jack (`plumb.in`) that could not be laid out."""

    outlines: dict[str, Outline]
    points: dict[Port, JackPoint]
    missing: dict[str, str]

    def outline(self, thing: str) -> Outline | None:
        """The outline of a thing; None where `missing` says why."""
        return self.outlines.get(thing)

    def point(self, port: Port) -> JackPoint | None:
        """The point of a jack or outlet; None where `missing` says why."""
        return self.points.get(port)

    def why_not(self, port: Port) -> str:
        """The fact that is missing to place a jack, empty if none is."""
        return self.missing.get(port.thing) or self.missing.get(str(port), "")


class _Socket(Record):
    """A jack or an outlet, as far as its place goes."""

    name: str
    side: str | None
    offset_mm: Quantity | None
    height_mm: Quantity | None


def placement(rig: Rig) -> Placement:
    """Lays out units, amps, desks, supplies, mains strips and panel jacks. A thing without a place, without one of its own or without a body
    is left out, and says so."""
    return laid_out(rig, {place.thing for places in crowded_places(rig) for place in places})


def laid_out(rig: Rig, crowded: Container[str] = ()) -> Placement:
    """The same with each thing where its place says, those aside that are `crowded`."""
    made = Placement({}, {}, {})
    for thing in (*rig.units.values(), *rig.supplies.values(), *rig.mains_strips.values()):
        if thing.name in crowded:
            made.missing[thing.name] = own_place(thing.name)
        else:
            _lay_out(rig, thing, made)
    for panel in rig.panels.values():
        made.points.update(_panel_points(rig, panel))
    return made


def turned_normal(dx: int, dy: int, turned: int) -> tuple[int, int]:
    """An outward normal after turning by so many degrees counter-clockwise."""
    for _ in range(turned // 90):
        dx, dy = -dy, dx
    return dx, dy


def _lay_out(rig: Rig, thing: Thing, made: Placement) -> None:
    place = rig.places.get(thing.name)
    if place is None:
        made.missing[thing.name] = f"the place of '{thing.name}'"
        return
    if thing.width_mm is None or thing.depth_mm is None:
        made.missing[thing.name] = f"the body of '{thing.name}'"
        return
    outline = _outline(rig, thing, place, thing.width_mm.value, thing.depth_mm.value)
    made.outlines[thing.name] = outline
    for socket in _sockets(thing):
        point = _point(rig, thing, socket, place, outline)
        if point is None:
            made.missing[f"{thing.name}.{socket.name}"] = place_of(thing.name, socket.name)
        else:
            made.points[Port(thing.name, socket.name)] = point


def _outline(rig: Rig, thing: Thing, place: Place, width_mm: float, depth_mm: float) -> Outline:
    if place.turned in (90, 270):
        width_mm, depth_mm = depth_mm, width_mm
    height = None if thing.height_mm is None else thing.height_mm.value
    deck = place.deck or (rig.deck.name if rig.deck is not None else None)
    tier = _tier(rig, place, deck)
    raised = 0.0 if tier is None else tier.raised_mm
    askew: Polygon = ()
    if place.skew_deg:
        around = skewed(width_mm, depth_mm, place.skew_deg)
        askew = tuple(around.at(spot, place) for spot in Rectangle(0.0, 0.0, width_mm, depth_mm).corners)
        width_mm, depth_mm = around.width_mm, around.depth_mm
    size = f"{plain(width_mm)} × {plain(depth_mm)}"
    return Outline(
        thing.name,
        place.x_mm,
        place.y_mm,
        width_mm,
        depth_mm,
        height,
        raised,
        place.under,
        deck,
        askew,
        _place(thing, place, f"{size} at {plain(place.x_mm)}, {plain(place.y_mm)}"),
    )


def _tier(rig: Rig, place: Place, deck: str | None) -> Tier | None:
    tiers = rig.decks[deck].tiers if deck in rig.decks else ()
    return next((tier for tier in tiers if tier.name == place.tier), None)


def _place(thing: Thing, place: Place, text: str) -> Answer:
    def because() -> str:
        changed = ": width and depth change places" if place.turned in (90, 270) else ""
        skew = f", and {plain(place.skew_deg)}° askew: the rectangle around it" if place.skew_deg else ""
        ground = ", under the deck" if place.under else f", on the tier {place.tier}" if place.tier is not None else ""
        return f"{text}, turned by {place.turned}°{changed}{skew}{ground}"

    return Answer(
        f"{thing.name}.place",
        text,
        because,
        lambda: (stands(place), *_body(thing)),
        rule="a place is the front-left corner of the outline after turning",
        source=ARITHMETIC,
        unit="mm",
    )


def _body(thing: Thing) -> tuple[Traced, ...]:
    return stated(f"{thing.name} width", thing.width_mm), stated(f"{thing.name} depth", thing.depth_mm)


def _sockets(thing: Thing) -> tuple[_Socket, ...]:
    jacks = tuple(_Socket(jack.name, jack.side, jack.offset_mm, jack.height_mm) for jack in thing.jacks)
    if not isinstance(thing, Supply):
        return jacks
    outlets = (_Socket(outlet.name, outlet.side, outlet.offset_mm, outlet.height_mm) for outlet in thing.outlets)
    return (*jacks, *outlets)


def _point(rig: Rig, thing: Thing, socket: _Socket, place: Place, outline: Outline) -> JackPoint | None:
    if socket.side is None or socket.offset_mm is None or thing.width_mm is None or thing.depth_mm is None:
        return None
    width, depth, offset = thing.width_mm.value, thing.depth_mm.value, socket.offset_mm.value
    x, y, dx, dy = {
        "left": (0.0, offset, -1, 0),
        "right": (width, offset, 1, 0),
        "front": (offset, 0.0, 0, -1),
        "rear": (offset, depth, 0, 1),
    }[socket.side]
    height = None if socket.height_mm is None else socket.height_mm.value
    normal: Spot = turned_normal(dx, dy, place.turned)
    if place.skew_deg:
        normal = turned(normal, place.skew_deg)
    port, at = Port(thing.name, socket.name), spot_of(thing, place, x, y)
    return JackPoint(
        *at,
        height,
        outline.raised_mm,
        *normal,
        place.under,
        False,
        outline.deck,
        _height(port, socket.height_mm, place, _tier(rig, place, outline.deck)),
        _at(port, thing, socket, place, at),
    )


def _height(port: Port, own: Quantity | None, place: Place, tier: Tier | None) -> AnyFigure:
    height = stated(f"how high {port} is", own, _UP)
    return figure(
        f"{port}.height",
        height if tier is None else height + at_place(f"tier {tier.name}", tier.raised_mm, tier.span, shown=_UP),
        _UP,
        *(() if tier is None else (stands(place),)),
        rule="height over the deck: the jack's over the base of its unit without feet, and that of the tier",
        source=ARITHMETIC,
    )


def _at(port: Port, thing: Thing, socket: _Socket, place: Place, at: Spot) -> Answer:
    text = f"{plain(at[0])}, {plain(at[1])}"

    def because() -> str:
        corner = (place.x_mm, place.y_mm)
        sums = [f"{plain(start)} + {plain(there - start)}" for start, there in zip(corner, at, strict=True)]
        return f"{', '.join(sums)} = {text}"

    return Answer(
        f"{port}.point",
        text,
        because,
        lambda: (
            stands(place),
            *_between(thing, socket.side, place),
            stated(f"{port} on the {socket.side} side", socket.offset_mm),
        ),
        rule="the outline's front-left corner and the jack's place in it, after turning",
        source=ARITHMETIC,
        unit="mm",
    )


def _between(thing: Thing, side: str | None, place: Place) -> tuple[Traced, ...]:
    """Of the width and the depth of a thing those that lie between the corner that stands front left and a jack on that side."""
    width, depth = _body(thing)
    along = (side == "right") != (place.turned in (180, 270))
    across = (side == "rear") != (place.turned in (90, 180))
    if place.skew_deg:
        return width, depth
    return (*((width,) if along else ()), *((depth,) if across else ()))


def _panel_points(rig: Rig, panel: Panel) -> dict[Port, JackPoint]:
    deck = panel.deck or (rig.deck.name if rig.deck is not None else None)
    return {Port(panel.name, jack.name): _panel_point(Port(panel.name, jack.name), jack, deck) for jack in panel.jacks}


def _panel_point(port: Port, jack: PanelJack, deck: str | None) -> JackPoint:
    height = None if jack.height_mm is None else jack.height_mm.value
    text = f"{plain(jack.x_mm)}, {plain(jack.y_mm)}"
    told = Answer(
        f"{port}.point",
        text,
        f"{text}, as stated",
        mentioned(str(port), text, jack.span, "mm"),
        rule="a panel's jacks lie on the deck",
        source=ARITHMETIC,
        unit="mm",
    )
    above = _panel_height(port, jack)
    return JackPoint(jack.x_mm, jack.y_mm, height, 0.0, 0, 0, False, True, deck, above, told)


def _panel_height(port: Port, jack: PanelJack) -> AnyFigure:
    return figure(
        f"{port}.height",
        stated(f"how high {port} is", jack.height_mm, _UP),
        _UP,
        rule="height over the deck, as stated",
        source=ARITHMETIC,
    )


COMPUTE = placement
