"""Things that stand on a deck or hang below it -> outlines, names, switches, knobs, plugs and jacks as shapes."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline
from rigc.analysis.deck.spot_on_thing import spot_of
from rigc.analysis.leads.plugs.plug_bodies import PlugBody
from rigc.model.deck import Place
from rigc.model.things import PanelJack, Thing
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.shapes import HAIR, THICK, THIN, Box, Circle, Point, Polygon, Shape

SWITCH_MM, KNOB_MM = 6.0, 5.0
"""Radius in mm of a foot switch and of a knob as drawn: signs, not the sizes of the parts."""

_LEAST = 0.9  # radius of a sign on paper


def outline(body: Outline, view: View, fill: str = "white", hidden: bool = False) -> Box | Polygon:
    """The footprint of a thing, askew where it stands so; dashed where the deck hides it."""
    colour, pattern, width = ("grey", "dashed", THIN) if hidden else ("black", "solid", THICK)
    if body.askew:
        return Polygon(_on_paper(body.askew, view), colour, pattern, width, fill)
    return boxed(view.room(body.area), colour, pattern, width, fill)


def switches(thing: Thing | None, place: Place, view: View) -> tuple[Circle, ...]:
    """Foot switches as dots, knobs as small rings; none for what is no unit."""
    if thing is None:
        return ()
    dots = [_circle(spot_of(thing, place, spot.x_mm, spot.y_mm), view, SWITCH_MM, "solid") for spot in thing.switches]
    rings = [_circle(spot_of(thing, place, spot.x_mm, spot.y_mm), view, KNOB_MM, "") for spot in thing.knobs]
    return (*dots, *rings)


def plug(body: PlugBody, view: View) -> tuple[Shape, ...]:
    """A plug hatched, and dotted the room that its cable needs to bend."""
    drawn: list[Shape] = [Polygon(_on_paper(body.corners(), view), fill="hatch")]
    if body.bend_mm:
        drawn.insert(0, Polygon(_on_paper(body.corners(body.bend_mm), view), pattern="dotted"))
    return tuple(drawn)


def _on_paper(corners: tuple[Point, ...], view: View) -> tuple[Point, ...]:
    return tuple(view.point(*corner) for corner in corners)


def jack_mark(jack: PanelJack, view: View) -> tuple[Shape, ...]:
    """A jack of a panel as a ring, a mains inlet as a box, where it is."""
    x, y = view.point(jack.x_mm, jack.y_mm)
    if jack.role == "inlet":
        return (Box(x - 1.6, y - 1.2, 3.2, 2.4, fill="solid"),)
    return (Circle(x, y, 1.4, fill="white"), Circle(x, y, 0.6, fill="solid"))


def _circle(at: tuple[float, float], view: View, radius_mm: float, fill: str) -> Circle:
    x, y = view.point(*at)
    return Circle(x, y, max(radius_mm / view.scale, _LEAST), fill=fill, width_mm=HAIR if fill else THIN)
