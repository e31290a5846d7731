"""PlugBodies: leads, their plug kinds and the jacks' points -> the room that every plug on a deck takes."""

from __future__ import annotations

from rigc.analysis.deck.placement import JackPoint, Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.geometry.polygon import Polygon
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span
from rigc.traced.term import known


class PlugBody(Record):
    """A plug in a jack of a placed thing, in mm: it stands out from the face and its cable needs `bend_mm` more.

    The body is centred on the jack, sideways and in height; `height_mm` is None where the stock does not say.
    """

    port: Port
    plug: str
    point: JackPoint
    stand_out_mm: float
    bend_mm: float
    width_mm: float
    height_mm: float | None
    span: Span

    @property
    def thing(self) -> str:
        """The thing whose jack it is in."""
        return self.port.thing

    @property
    def needs_mm(self) -> float:
        """The room it needs out from the jack's face: what it stands out, and the bend of its cable."""
        return self.stand_out_mm + self.bend_mm

    @property
    def levels_mm(self) -> tuple[float, float] | None:
        """Its lowest and highest point above the plain deck; None where a height is missing."""
        height = known(self.point.height)
        if height is None or self.height_mm is None:
            return None
        middle = float(height) / 10
        return middle - self.height_mm / 2, middle + self.height_mm / 2

    @property
    def askew(self) -> bool:
        """Whether it looks along no axis."""
        return bool(self.point.dx and self.point.dy)

    def corners(self, further_mm: float = 0.0) -> Polygon:
        """The corners of what it takes seen from above, and that much further outwards."""
        if not self.askew:
            return self.room(further_mm).corners
        point, half = self.point, self.width_mm / 2
        length = self.stand_out_mm + further_mm
        aside, out = (-point.dy * half, point.dx * half), (point.dx * length, point.dy * length)
        return tuple(
            (point.x_mm + sign * aside[0] + share * out[0], point.y_mm + sign * aside[1] + share * out[1])
            for sign, share in ((-1, 0), (-1, 1), (1, 1), (1, 0))
        )

    def room(self, further_mm: float = 0.0) -> Rectangle:
        """What it takes seen from above, and that much further outwards; of a plug askew, the rectangle around it."""
        if self.askew:
            across, along = zip(*self.corners(further_mm), strict=True)
            return Rectangle(min(across), min(along), max(across) - min(across), max(along) - min(along))
        length = self.stand_out_mm + further_mm
        point, half = self.point, self.width_mm / 2
        if point.dx:
            return Rectangle(point.x_mm - (length if point.dx < 0 else 0), point.y_mm - half, length, self.width_mm)
        return Rectangle(point.x_mm - half, point.y_mm - (length if point.dy < 0 else 0), self.width_mm, length)


class UnknownPlug(Record):
    """A jack whose plug cannot be judged, and the fact that is missing."""

    port: Port
    missing: str
    span: Span


class PlugBodies(Record):
    """All plugs in jacks of placed things, in the order of the leads; one a jack. Panels are not counted: their leads
    are soldered inside."""

    all: tuple[PlugBody, ...]
    unknown: tuple[UnknownPlug, ...]


def plug_bodies(rig: Rig, leads: Leads, placement: Placement) -> PlugBodies:
    """Both ends of every lead that are on a deck; legs of one Y lead share the plug at their outlet."""
    found: dict[Port, PlugBody | UnknownPlug] = {}
    for lead in leads.all:
        for number, port in enumerate((lead.start, lead.end)):
            if port not in found and placement.outline(port.thing) is not None:
                one = _plug(rig, placement, lead, number)
                if one is not None:
                    found[port] = one
    return PlugBodies(
        tuple(one for one in found.values() if isinstance(one, PlugBody)),
        tuple(one for one in found.values() if isinstance(one, UnknownPlug)),
    )


def _plug(rig: Rig, placement: Placement, lead: Lead, number: int) -> PlugBody | UnknownPlug | None:
    port = (lead.start, lead.end)[number]
    if port == lead.captive or (lead.signal == "mains" and lead.made_mm is not None):
        return None  # a mains lead whose length is stated was laid on the board, and its connectors with it
    plug = rig.stock.plugs.get(lead.ends[number] or "")
    if plug is None:
        return UnknownPlug(port, f"the plug kind at '{port}'", lead.span)
    if plug.soldered:
        return None
    point = placement.point(port)
    if point is None:
        return UnknownPlug(port, placement.why_not(port), lead.span)
    if plug.stand_out_mm is None or plug.width_mm is None:
        return UnknownPlug(port, f"the size of the plug '{plug.name}'", lead.span)
    return PlugBody(
        port=port,
        plug=plug.name,
        point=point,
        stand_out_mm=plug.stand_out_mm.value,
        bend_mm=plug.bend_mm.value if plug.bend_mm is not None else 0.0,
        width_mm=plug.width_mm.value,
        height_mm=None if plug.height_mm is None else plug.height_mm.value,
        span=lead.span,
    )


COMPUTE = plug_bodies
