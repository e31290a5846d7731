"""Faces -> the deck seen from the rear or in section from the player's right, with clearance, lid and the tallest thing."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import PanelJack
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.callouts import Callout, callouts, depth
from rigc.reports.drawings.deck.faces import REAR, Face, faces, visible
from rigc.reports.drawings.deck.heights import Limit, floor_at, limits_above
from rigc.reports.drawings.deck.view import PAGE_HEIGHT, PAGE_WIDTH, fitting_scale
from rigc.reports.drawings.means.dimension import upright_dimension
from rigc.reports.drawings.plots.spreading import spread
from rigc.reports.drawings.shapes import LETTERS, THICK, THIN, Box, Circle, Label, Line, Point, Shape

LEFT, RIGHT, FOOT = 14.0, 42.0, 7.0
_LEADERS = 1.5  # between leaders side by side, in mm
_IN = 4.0  # from the end of a tier to where its name points, in mm of the deck
_NAMES = 22.0  # room for names over the tallest thing, in mm
_HEIGHT = PAGE_HEIGHT / 2 - _NAMES - FOOT  # the views of one deck share a page


class Edge(Record):
    """An elevation on paper: the deck's upper surface lies at `zero`, its edge runs from `left` over `span_mm`."""

    scale: float
    left: float
    zero: float
    span_mm: float
    mirrored: bool

    def point(self, along: float, height: float) -> Point:
        """Where a point of the edge at a height over the deck stands on paper."""
        across = self.span_mm - along if self.mirrored else along
        return self.left + across / self.scale, self.zero - height / self.scale

    def box(self, low: float, high: float, bottom: float, top: float, fill: str, width: float) -> Box:
        """A rectangle of the elevation."""
        (x1, y1), (x2, y2) = self.point(low, top), self.point(high, bottom)
        return Box(min(x1, x2), y1, abs(x2 - x1), y2 - y1, fill=fill, width_mm=width)


def elevation(rig: Rig, deck: Deck, span_mm: float, placement: Placement, plugs: PlugBodies, view: str) -> Drawing:
    """The drawing of one view; things whose height is not stated are left out, and named in its caption."""
    seen = faces(deck, placement, plugs, view)
    limits, behind = ((), 0.0) if view == REAR else (limits_above(rig, deck), span_mm)
    over = max(
        [
            0.0,
            *(face.top for face in seen),
            *(limit.over_mm for limit in limits),
            *(tier.raised_mm for tier in deck.tiers),
        ]
    )
    below = max([-floor_at(deck, behind), *(-face.bottom for face in seen)])
    scale = fitting_scale(span_mm, over + below, PAGE_WIDTH - LEFT - RIGHT, _HEIGHT)
    edge = Edge(scale, LEFT, _NAMES + over / scale, span_mm, view == REAR)
    hiding = (*seen, *_tier_faces(deck, span_mm, view))
    above = (*_calls(edge, seen, hiding), *_tier_calls(deck, edge, view))
    edge = edge.replace(zero=3 + depth(above) + over / scale)
    above = (*_calls(edge, seen, hiding), *_tier_calls(deck, edge, view))
    hanging = (*_hanging(edge, seen), *(_panel_calls(rig, deck, edge) if view == REAR else ()))
    floor = edge.zero + below / scale
    height = round(floor + depth(hanging) + FOOT, 1)
    shapes = [
        *_bodies(edge, seen, _tiers(deck, edge, view)),
        *_deck(deck, edge, view),
        *(_panel(rig, deck, edge) if view == REAR else _limits(edge, limits)),
    ]
    shapes += callouts(above, edge.zero - over / scale - 2)
    shapes += [*callouts(hanging, floor + 2, below=True), *_measures(deck, edge, seen, behind)]
    shapes.append(Label(LEFT, height - 1.5, _FOOTS[view]))
    return Drawing(
        name=f"{view}-{deck.name}",
        title=f"Deck {deck.name}, {_TITLES[view]}",
        desc=_described(deck, seen, limits, view),
        width_mm=round(LEFT + span_mm / scale + RIGHT, 1),
        height_mm=height,
        shapes=tuple(shapes),
        scale=scale,
        caption=_left_out(deck, placement, seen, (*above, *hanging)),
    )


_TITLES = {"rear": "seen from the rear", "side": "section from the player's right"}
_FOOTS = {"rear": "the player's right is at the left", "side": "the player stands at the left; the deck is drawn level"}


def _thickness(deck: Deck) -> float:
    return 0.0 if deck.thickness_mm is None else deck.thickness_mm.value


def _bodies(edge: Edge, seen: tuple[Face, ...], tiers: tuple[tuple[float, tuple[Shape, ...]], ...]) -> list[Shape]:
    """The farthest first, each with the plugs on its face, and the tiers between them."""
    drawn: list[tuple[float, tuple[Shape, ...]]] = [*tiers]
    for face in seen:
        plugs = (edge.box(*plug, "hatch", THIN) for plug in face.plugs)
        drawn.append((face.near, (edge.box(face.low, face.high, face.bottom, face.top, "white", THICK), *plugs)))
    return [shape for _, shapes in sorted(drawn, key=lambda each: each[0]) for shape in shapes]


def _tiers(deck: Deck, edge: Edge, view: str) -> tuple[tuple[float, tuple[Shape, ...]], ...]:
    """Each raised part with how near it stands: its plate, as thick as the deck, and what carries it."""
    found = []
    for tier in deck.tiers:
        low, high = (0.0, edge.span_mm) if view == REAR else (tier.front_mm, tier.rear_mm)
        under = max(0.0, tier.raised_mm - _thickness(deck))
        shapes = (
            edge.box(low, high, 0, tier.raised_mm, "white", THIN),
            edge.box(low, high, under, tier.raised_mm, "cross-hatch", THICK),
        )
        found.append((tier.rear_mm if view == REAR else -1.0, shapes))
    return tuple(found)


def _tier_faces(deck: Deck, span_mm: float, view: str) -> tuple[Face, ...]:
    """The raised parts as what stands before things from the rear."""
    return tuple(
        Face(tier.name, 0.0, span_mm, 0.0, tier.raised_mm, tier.rear_mm, False, ())
        for tier in deck.tiers
        if view == REAR
    )


def _tier_calls(deck: Deck, edge: Edge, view: str) -> tuple[Callout, ...]:
    """Each tier's name with its height, where its plate begins."""
    return tuple(
        Callout(
            f"tier {tier.name}, {tier.raised_mm:g} over the deck",
            edge.point(
                edge.span_mm - _IN if view == REAR else tier.front_mm + _IN, tier.raised_mm - _thickness(deck) / 2
            ),
        )
        for tier in deck.tiers
    )


def _deck(deck: Deck, edge: Edge, view: str) -> list[Shape]:
    """The deck and the floor; from the side the floor falls away behind where the deck stands at an angle."""
    shapes: list[Shape] = [edge.box(0, edge.span_mm, -_thickness(deck), 0, "cross-hatch", THICK)]
    if deck.clearance_mm is None:
        return shapes
    beyond = 6 * edge.scale
    ends = [edge.point(at, floor_at(deck, 0.0 if view == REAR else at)) for at in (-beyond, edge.span_mm + beyond)]
    (x1, y1), (x2, y2) = sorted(ends)
    shapes += [Line(x1, y1, x2, y2, width_mm=THICK), Label(x2 + 1, y2, _floor_words(deck, view), level="middle")]
    return shapes


def _floor_words(deck: Deck, view: str) -> str:
    if deck.angle_deg is None or not deck.angle_deg.value:
        return "floor"
    return "floor, at the front" if view == REAR else f"floor, at {deck.angle_deg.value:g}°"


def _calls(edge: Edge, seen: tuple[Face, ...], hiding: tuple[Face, ...]) -> tuple[Callout, ...]:
    """What is seen of each thing on top."""
    standing = tuple(face for face in seen if not face.under)
    return tuple(Callout(face.thing, edge.point(at, face.top - 4)) for face, at in _spots(standing, hiding, edge.scale))


def _hanging(edge: Edge, seen: tuple[Face, ...]) -> tuple[Callout, ...]:
    """What hangs below the deck: told where most of it is seen, at its lower edge."""
    turned = tuple(face.replace(bottom=-face.top, top=-face.bottom) for face in seen)
    under = tuple(face for face in turned if face.under)
    return tuple(Callout(face.thing, edge.point(at, 4 - face.top)) for face, at in _spots(under, turned, edge.scale))


def _spots(some: tuple[Face, ...], hiding: tuple[Face, ...], scale: float) -> list[tuple[Face, float]]:
    """Where along the edge a leader goes to each that is seen: in the middle of what is seen of it, or beside the leader there."""
    seen = [(face, stretch) for face in some if (stretch := visible(face, hiding)) is not None]
    found: list[tuple[Face, float]] = []
    taken: list[float] = []
    for face, (low, high) in sorted(seen, key=lambda each: each[1][1] - each[1][0]):
        middle = (low + high) / 2
        ways = (middle + side * step * _LEADERS * scale for step in range(4) for side in (1, -1))
        free = (at for at in ways if low <= at <= high and all(abs(at - other) >= _LEADERS * scale for other in taken))
        at = next(free, middle)
        taken.append(at)
        found.append((face, at))
    return found


def _panel_jacks(rig: Rig, deck: Deck) -> list[PanelJack]:
    panels = (panel for panel in rig.panels.values() if (panel.deck or deck.name) == deck.name)
    return [jack for panel in panels for jack in panel.jacks]


def _panel_point(deck: Deck, jack: PanelJack, edge: Edge) -> Point:
    """A panel jack stands at its own height, or in the middle of the deck's edge where that is not stated."""
    return edge.point(jack.x_mm, jack.height_mm.value if jack.height_mm is not None else -_thickness(deck) / 2)


def _panel_calls(rig: Rig, deck: Deck, edge: Edge) -> tuple[Callout, ...]:
    return tuple(Callout(jack.name, _panel_point(deck, jack, edge)) for jack in _panel_jacks(rig, deck))


def _panel(rig: Rig, deck: Deck, edge: Edge) -> list[Shape]:
    shapes: list[Shape] = []
    for jack in _panel_jacks(rig, deck):
        x, y = _panel_point(deck, jack, edge)
        inlet = Box(x - 2, y - 1.5, 4, 3, fill="white", width_mm=THICK)
        shapes.append(inlet if jack.role == "inlet" else Circle(x, y, 1.3, fill="white", width_mm=THICK))
    return shapes


def _limits(edge: Edge, limits: tuple[Limit, ...]) -> list[Shape]:
    """A line for each, its words at the right; words of lines that are near each other are spread."""
    (x1, _), (x2, _) = edge.point(0, 0), edge.point(edge.span_mm, 0)
    wishes = tuple(edge.point(0, limit.over_mm)[1] for limit in limits)
    heights = spread(wishes, LETTERS + 0.9, 1.5, edge.zero - 3)
    shapes: list[Shape] = []
    for limit, y, height in zip(limits, wishes, heights, strict=True):
        shapes.append(Line(x1 - 3, y, x2 + 6, y, pattern="dash-dot", width_mm=THICK))
        shapes.append(Label(x2 + 7, height, limit.words, level="middle"))
    return shapes


def _measures(deck: Deck, edge: Edge, seen: tuple[Face, ...], behind_mm: float) -> list[Shape]:
    """Right of the deck: the tallest thing, the thickness and the clearance."""
    right = edge.left + edge.span_mm / edge.scale
    stretches = []
    standing = [face for face in seen if not face.under]
    if standing:
        tallest = max(standing, key=lambda face: (face.top, face.near, face.thing))
        stretches.append((tallest.top, 0.0, f"{tallest.top:g}, {tallest.thing}"))
    thickness = _thickness(deck)
    if thickness:
        stretches.append((0.0, -thickness, f"{thickness:g}, deck"))
    if deck.clearance_mm is not None:
        floor = floor_at(deck, behind_mm)
        stretches.append((-thickness, floor, f"{nearest_tenth(-thickness - floor)}, clear"))
    shapes: list[Shape] = []
    for top, bottom, text in stretches:
        y1, y2 = edge.zero - top / edge.scale, edge.zero - bottom / edge.scale
        *lines, _ = upright_dimension(y1, y2, right, right + 5, "")
        shapes += [*lines, Label(right + 7, (y1 + y2) / 2, text, level="middle")]
    return shapes


def _described(deck: Deck, seen: tuple[Face, ...], limits: tuple[Limit, ...], view: str) -> str:
    tops = ", ".join(f"{face.thing} {face.top:g}" for face in seen if not face.under) or "nothing"
    under = ", ".join(face.thing for face in seen if face.under) or "nothing"
    told = f" Lines above: {', '.join(limit.words for limit in limits)}." if limits else ""
    told += "".join(f" Tier {tier.name} is raised by {tier.raised_mm:g}." for tier in deck.tiers)
    told += f" It stands at {deck.angle_deg.value:g}°, the rear higher." if deck.angle_deg is not None else ""
    return f"Deck {deck.name}, {_TITLES[view]}. Tops in mm over the deck: {tops}. Below it: {under}.{told}"


def _left_out(deck: Deck, placement: Placement, seen: tuple[Face, ...], named: tuple[Callout, ...]) -> str:
    """What cannot be drawn, and what others hide."""
    drawn, told = [face.thing for face in seen], {call.text for call in named}
    missing = [body.thing for body in placement.outlines.values() if body.deck == deck.name and body.thing not in drawn]
    hidden = [thing for thing in drawn if thing not in told]
    sentences = [f"Behind others: {', '.join(hidden)}."] if hidden else []
    sentences += [f"Not drawn, for want of a height: {', '.join(missing)}."] if missing else []
    return " ".join(sentences)
