"""Places, bodies and jacks -> outlines on the decks, and every jack's point with the way it looks."""

from __future__ import annotations

from rigc.analysis.cables.same_place import place_of
from rigc.analysis.deck.spot_on_thing import skewed, spot_of
from rigc.model.deck import Place
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.polygon import Polygon, Spot, turned
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.things import Panel, PanelJack, Supply, Thing
from rigc.record import Record


class Outline(Record):
    """The room that a placed thing takes, after turning, in mm; `height_mm` is None where the source does not say.

    `raised_mm` is that of the tier it stands on, 0 on the plain deck; `under` things hang below the deck. A thing that
    stands `askew` has the corners of its body there; its x, y, width and depth are those of the rectangle around them.
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

    @property
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
    of the tier. A jack of a panel has no face: its normal is (0, 0); that of a thing askew is no whole number.
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
    """Lays out units, amps, desks, supplies, mains strips and panel jacks. A thing without a place or body is left out, and says so."""
    made = Placement({}, {}, {})
    for thing in (*rig.units.values(), *rig.supplies.values(), *rig.mains_strips.values()):
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
        point = _point(thing, socket, place, outline)
        if point is None:
            made.missing[f"{thing.name}.{socket.name}"] = place_of(thing.name, socket.name)
        else:
            made.points[Port(thing.name, socket.name)] = point


def _outline(rig: Rig, thing: Thing, place: Place, width_mm: float, depth_mm: float) -> Outline:
    if place.turned in (90, 270):
        width_mm, depth_mm = depth_mm, width_mm
    height = None if thing.height_mm is None else thing.height_mm.value
    deck = place.deck or (rig.deck.name if rig.deck is not None else None)
    tiers = rig.decks[deck].tiers if deck in rig.decks else ()
    raised = next((tier.raised_mm for tier in tiers if tier.name == place.tier), 0.0)
    askew: Polygon = ()
    if place.skew_deg:
        around = skewed(width_mm, depth_mm, place.skew_deg)
        askew = tuple(around.at(spot, place) for spot in Rectangle(0.0, 0.0, width_mm, depth_mm).corners)
        width_mm, depth_mm = around.width_mm, around.depth_mm
    return Outline(thing.name, place.x_mm, place.y_mm, width_mm, depth_mm, height, raised, place.under, deck, askew)


def _sockets(thing: Thing) -> tuple[_Socket, ...]:
    jacks = tuple(_Socket(jack.name, jack.side, jack.offset_mm, jack.height_mm) for jack in thing.jacks)
    if not isinstance(thing, Supply):
        return jacks
    outlets = (_Socket(outlet.name, outlet.side, outlet.offset_mm, outlet.height_mm) for outlet in thing.outlets)
    return (*jacks, *outlets)


def _point(thing: Thing, socket: _Socket, place: Place, outline: Outline) -> JackPoint | None:
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
    return JackPoint(*spot_of(thing, place, x, y), height, outline.raised_mm, *normal, place.under, False, outline.deck)


def _panel_points(rig: Rig, panel: Panel) -> dict[Port, JackPoint]:
    deck = panel.deck or (rig.deck.name if rig.deck is not None else None)
    return {Port(panel.name, jack.name): _panel_point(jack, deck) for jack in panel.jacks}


def _panel_point(jack: PanelJack, deck: str | None) -> JackPoint:
    height = None if jack.height_mm is None else jack.height_mm.value
    return JackPoint(jack.x_mm, jack.y_mm, height, 0.0, 0, 0, False, True, deck)


COMPUTE = placement
