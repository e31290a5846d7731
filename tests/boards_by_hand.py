"""Boards built by hand, without the language: things at places with their jacks, and leads between them. All invented."""

from __future__ import annotations

from typing import Any

from rigc.analysis.deck.placement import placement
from rigc.analysis.leads.lead_make import STRAIGHT
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Length, cable_lengths
from rigc.analysis.leads.lengths.cable_routes import Route, cable_routes
from rigc.model.deck import Deck, Place, Tier
from rigc.model.fact import Fact
from rigc.model.jacks import Connector, Jack, Port
from rigc.model.rig import Head, Rig
from rigc.model.stock import Plug, Stock
from rigc.model.things import Panel, PanelJack, Unit
from rigc.model.wishes import LeadWishes, MountWishes, PowerWishes
from rigc.source import Source, Span
from rigc.traced.figure import Figure
from rigc.traced.term import Term

SPAN = Span(Source("by-hand.rig", "by hand\n"), 0, 7)
SIDES = {"L": "left", "R": "right", "F": "front", "B": "rear"}
HEAD = Head(
    "by-hand", "By Hand (invented)", "A", "2026-03-02", "", "home", "", "", "", None, None, None, None, (), (), SPAN
)  # fmt: skip


def fact(value: Any) -> Fact[Any]:
    return Fact(value, str(value), SPAN)


def _plug(name: str, exit_mm: float, cut_in_mm: float | None, soldered: bool = False) -> Plug:
    cut_in = None if cut_in_mm is None else fact(cut_in_mm)
    return Plug(name, "", SPAN, exit_mm=fact(exit_mm), cut_in_mm=cut_in, soldered=soldered)


# Exit axis and cut-in in mm of the plug table that both worked rigs use; the two without cut-in come on premade leads.
# Premade lengths: common practice, no source.
STOCK = Stock(
    {},
    {
        plug.name: plug
        for plug in (
            _plug("flat", 8, 12),
            _plug("angle", 10, 14),
            _plug("straight", 60, 22),
            _plug("dc", 7, None),
            _plug("mini", 7, None),
            _plug("panel", 0, 14, soldered=True),
        )
    },
    {},
    {
        "audio": (100, 150, 200, 300, 450, 600, 750, 900, 1200),
        "dc": (150, 300, 450, 600, 900, 1200),
        "midi": (300, 600, 900, 1500),
    },
)
Stand = tuple[Unit, Place]


def stand(
    name: str, x: float, y: float, body: str, jacks: str, turned: int = 0, under: bool = False, tier: str | None = None
) -> Stand:
    """A thing and its place, as `stand("hedge", 150, 10, "75 115 48", "in:R70/24 out:L70")`: heights may be left out."""
    width, depth, height = (fact(float(size)) for size in body.split())
    unit = Unit(
        "unit",
        name,
        "",
        SPAN,
        width_mm=width,
        depth_mm=depth,
        height_mm=height,
        jacks=tuple(_jack(*jack.split(":")) for jack in jacks.split()),
    )
    return unit, Place(name, x, y, turned, under, None, tier, None, "", SPAN)


def _jack(name: str, where: str) -> Jack:
    offset, _, height = where[1:].partition("/")
    high = fact(float(height)) if height else None
    return Jack(name, "input", Connector("ts"), SPAN, SIDES[where[0]], fact(float(offset)), high)


def deck(
    width: float,
    depth: float,
    thickness: float | None,
    *drops: float,
    tiers: tuple[Tier, ...] = (),
    clearance: float | None = None,
) -> Deck:
    return Deck(
        "board",
        "",
        SPAN,
        width_mm=fact(width),
        depth_mm=fact(depth),
        thickness_mm=None if thickness is None else fact(thickness),
        drops_mm=drops,
        tiers=tiers,
        clearance_mm=None if clearance is None else fact(clearance),
    )


def panel(name: str, **points: tuple[float, float]) -> Panel:
    jacks = tuple(PanelJack(jack, "panel", Connector("ts"), SPAN, x_mm=x, y_mm=y) for jack, (x, y) in points.items())
    return Panel(name, "", SPAN, None, jacks, (), None)


def board(plate: Deck | None, *stands: Stand, panels: tuple[Panel, ...] = (), **more: Any) -> Rig:
    """A rig with that deck and those things; whatever else a rig has is empty."""
    values: dict[str, Any] = {name: {} if kind.startswith("dict") else () for name, kind in Rig.__annotations__.items()}
    values |= {
        "head": HEAD,
        "units": {unit.name: unit for unit, _ in stands},
        "places": {unit.name: place for unit, place in stands},
        "panels": {each.name: each for each in panels},
        "decks": {} if plate is None else {plate.name: plate},
        "stock": STOCK,
        "midi_master": None,
        "power": PowerWishes(),
        "lead_wishes": LeadWishes(),
        "mounting": MountWishes(),
        "end": SPAN,
    }
    return Rig(**(values | more))


def port(text: str) -> Port:
    return Port(*text.split("."))


def lead(mark: str, start: str, end: str, plugs: str, **more: Any) -> Lead:
    """`lead("A2", "plumb.out", "hedge.in", "flat flat")`; its signal follows from the letter of its number."""
    first, second = plugs.split()
    values: dict[str, Any] = dict.fromkeys(Lead.FIELDS) | {
        "mark": mark,
        "signal": {"A": "audio", "C": "control", "D": "dc", "M": "midi", "N": "mains"}[mark[0]],
        "start": port(start),
        "end": port(end),
        "stage": False,
        "ends": (first, second),
        "premade": False,
        "span": SPAN,
        "make": STRAIGHT,
        "through_mm": (),
        "chosen": (False, False),
    }
    return Lead(**(values | more))


def routed(rig: Rig, *leads: Lead) -> dict[str, Route]:
    return cable_routes(rig, placement(rig), Leads(leads)).routes


def stretches(route: Route) -> tuple[int, ...]:
    """What its way is summed from, in tenths of a millimetre: level stretches first, then those up and down."""
    assert isinstance(route.way, Figure)
    return tuple(round(part) for part in route.way.how.of if isinstance(part, Term))


def level(route: Route) -> tuple[int, ...]:
    """Those along the deck: beyond them are the climb of a direct way, the two passages of another, and its dip beneath a body."""
    return stretches(route)[: -1 if route.kind == "direct" else -3 if route.dip else -2]


def reckoned(rig: Rig, *leads: Lead) -> CableLengths:
    return cable_lengths(rig, Leads(leads), cable_routes(rig, placement(rig), Leads(leads)))


def one_length(rig: Rig, one: Lead) -> Length:
    return reckoned(rig, one).lengths[one.mark]
