"""A unit or supply -> its plan with its jacks, each with how far it lies along its side, and its switches and knobs."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.model.jacks import Jack
from rigc.model.things import Outlet, Supply, Unit
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.view import fitting_scale
from rigc.reports.drawings.means.label_box import letters_box
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.shapes import HAIR, LETTERS, THICK, THIN, Box, Circle, Label, Line, Shape

WIDTH, DEPTH = 62.0, 30.0
"""What the outline may take on paper, in mm; names stand around it."""

_PITCH = LETTERS * 1.4
_LEADER, _GAP = 4.0, 0.8
_MARGIN = 3.0
_DATUM = 1.2


class _Spot(Record):
    """A jack or outlet: where it lies along its side, in mm of the thing."""

    name: str
    side: str
    offset_mm: float

    @property
    def text(self) -> str:
        """Its name, and how far it lies from the datum."""
        return f"{self.name} {self.offset_mm:g}"


def has_plan(thing: Unit | Supply) -> bool:
    """Whether its width and depth are stated."""
    return thing.width_mm is not None and thing.depth_mm is not None


def unit_plan(thing: Unit | Supply) -> Drawing | None:
    """Seen from above, front side below; None where its width or depth is not stated. Dimensions are written: it bears no scale bar."""
    if thing.width_mm is None or thing.depth_mm is None:
        return None
    wide, deep = thing.width_mm.value, thing.depth_mm.value
    scale = fitting_scale(wide, deep, WIDTH, DEPTH)
    spots = tuple(_spots(thing))
    aside = {side: _room(spots, side) for side in ("left", "right", "front", "rear")}
    left, top = aside["left"], aside["rear"]
    right, bottom = left + wide / scale, top + deep / scale
    shapes: list[Shape] = [
        Box(left, top, wide / scale, deep / scale, width_mm=THICK),
        Circle(left, bottom, _DATUM, width_mm=THIN, fill="solid"),
        *_dots(thing, left, bottom, scale),
    ]
    for side in aside:
        own = tuple(spot for spot in spots if spot.side == side)
        shapes += _upright(own, side, left, right, bottom, scale) if side in ("left", "right") else ()
        shapes += _level(own, side, left, right, top, bottom, scale) if side in ("front", "rear") else ()
    foot = bottom + aside["front"]
    told = f"front; {wide:g} × {deep:g} mm, from the dot; 1:{scale:g}"
    shapes.append(Label(left, foot + LETTERS, told))
    names = [letters_box(shape) for shape in shapes if isinstance(shape, Label)]
    return Drawing(
        name=f"plan-{thing.name}",
        title=f"{thing.name}: {thing.title}" if thing.title else thing.name,
        desc=f"Plan of {thing.name}, {wide:g} × {deep:g} mm: "
        + ("; ".join(f"{spot.text} on the {spot.side}" for spot in spots) or "no jack whose place is stated"),
        width_mm=round(max(right + aside["right"], *(name.right + 2 for name in names)), 1),
        height_mm=round(max(name.bottom + 2 for name in names), 1),
        shapes=tuple(shapes),
    )


def _spots(thing: Unit | Supply) -> Iterator[_Spot]:
    jacks: tuple[Jack | Outlet, ...] = (*thing.jacks, *(thing.outlets if isinstance(thing, Supply) else ()))
    for jack in jacks:
        if jack.side is not None and jack.offset_mm is not None:
            yield _Spot(jack.name, jack.side, jack.offset_mm.value)


def _room(spots: tuple[_Spot, ...], side: str) -> float:
    """What the names on a side take, in mm."""
    longest = max((text_width(spot.text, LETTERS) for spot in spots if spot.side == side), default=0.0)
    return longest + _LEADER + _GAP + 1.5 if longest else _MARGIN


def _upright(
    spots: tuple[_Spot, ...], side: str, left: float, right: float, bottom: float, scale: float
) -> Iterator[Shape]:
    """Names beside the left or right edge."""
    wishes = tuple(bottom - spot.offset_mm / scale for spot in spots)
    edge, out = (left, -1.0) if side == "left" else (right, 1.0)
    for spot, at, y in zip(spots, wishes, spread(wishes, _PITCH, -1e6, 1e6), strict=True):
        yield Line(edge - out, at, edge + out, at, width_mm=THICK)
        yield Line(edge + out, at, edge + out * _LEADER, y, width_mm=HAIR)
        anchor = "end" if side == "left" else "start"
        yield Label(edge + out * (_LEADER + _GAP), y, spot.text, anchor=anchor, level="middle")


def _level(
    spots: tuple[_Spot, ...], side: str, left: float, right: float, top: float, bottom: float, scale: float
) -> Iterator[Shape]:
    """Names beyond the front or rear edge, to be read from the right."""
    wishes = tuple(left + spot.offset_mm / scale for spot in spots)
    edge, out = (top, -1.0) if side == "rear" else (bottom, 1.0)
    for spot, at, x in zip(spots, wishes, spread(wishes, _PITCH, min(left, right), 1e6), strict=True):
        yield Line(at, edge - out, at, edge + out, width_mm=THICK)
        yield Line(at, edge + out, x, edge + out * _LEADER, width_mm=HAIR)
        anchor = "start" if side == "rear" else "end"
        yield Label(x, edge + out * (_LEADER + _GAP), spot.text, anchor=anchor, level="middle", rotation=-90)


def _dots(thing: Unit | Supply, left: float, bottom: float, scale: float) -> Iterator[Shape]:
    for spot in thing.switches:
        yield Circle(left + spot.x_mm / scale, bottom - spot.y_mm / scale, 1.4, width_mm=THIN, fill="solid")
    for spot in thing.knobs:
        yield Circle(left + spot.x_mm / scale, bottom - spot.y_mm / scale, 1.4, width_mm=THIN)
