"""A lead, the placement and the stock -> where each end leaves its plug, in tenths of a millimetre, or what stands in the way:
`A14.exit.a`, `A14.exit.b`."""

from __future__ import annotations

from rigc.analysis.deck.placement import JackPoint, Placement
from rigc.analysis.leads.leads import Lead
from rigc.diagnostics.figures import millimetres, plain
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.stock import Plug
from rigc.record import Record
from rigc.traced.figure import Answer
from rigc.traced.given import stated
from rigc.traced.means import becomes
from rigc.traced.reason import ARITHMETIC
from rigc.traced.term import Term, known


class LeadEnd(Record):
    """Where a lead leaves its plug, in tenths of a millimetre; `height` is its jack's over the deck's top.

    It is `on_top` of the deck, or below it, or at a panel. `height` is None where it is not stated. `told` is where it leaves.
    """

    port: Port
    x: int
    y: int
    height: Term | None
    on_top: bool
    panel: bool
    deck: str | None
    told: Answer

    @property
    def above(self) -> int | None:
        """Its jack's height over the deck's top, in whole tenths of a millimetre; None where it is not stated."""
        return None if self.height is None else int(self.height)


class Obstacle(Record):
    """Why a lead has no route: with `missing` the fact that is not stated and whose it is, else what is in the way;
    `blocked` where nothing leads through or below the deck; `between` where it joins two decks, so that its length is what
    the source says; `apart` are two decks that nothing joins."""

    reason: str
    about: str = ""
    missing: bool = False
    blocked: bool = False
    between: bool = False
    apart: tuple[str, ...] = ()


def lead_ends(rig: Rig, placement: Placement, lead: Lead) -> tuple[LeadEnd, LeadEnd] | Obstacle:
    """Both ends of a lead, or the first obstacle."""
    if not rig.decks:
        return Obstacle("a deck", missing=True)
    if not rig.places:
        return Obstacle("a place for any thing", missing=True)
    start = _end(rig, placement, lead, 0)
    end = _end(rig, placement, lead, 1)
    if isinstance(start, Obstacle):
        return start
    if isinstance(end, Obstacle):
        return end
    if start.deck != end.deck:
        decks = {start.deck, end.deck}
        if any({one, other} == decks and lead.mark in marks for one, other, marks in rig.joins):
            return Obstacle(
                f"its length: it joins '{start.deck}' to '{end.deck}'", lead.mark, missing=True, between=True
            )
        return Obstacle(
            f"'{start.port}' and '{end.port}' are on different decks", apart=tuple(filter(None, (start.deck, end.deck)))
        )
    return start, end


def tenths(length_mm: float) -> int:
    """A length in whole tenths of a millimetre."""
    return round(length_mm * 10)


def whole_tenths(length: Term) -> Term:
    """A length in tenths of a millimetre, rounded where it is not a whole number of them."""
    rounded: Term = length if length == int(length) else becomes(length, round)
    return rounded


def _end(rig: Rig, placement: Placement, lead: Lead, number: int) -> LeadEnd | Obstacle:
    port, kind = (lead.start, lead.end)[number], lead.ends[number]
    point = placement.point(port)
    if point is None:
        return Obstacle(placement.why_not(port) or f"where '{port}' is", port.thing, missing=True)
    plug = None if kind is None else rig.stock.plugs[kind]
    exit_mm = _exit_mm(lead, port, plug)
    if isinstance(exit_mm, Obstacle):
        return exit_mm
    height = known(point.height)
    on_top = not point.under and not point.panel
    if on_top and height is None:
        return Obstacle(f"how high '{port}' is", port.thing, missing=True)
    x, y = tenths(point.x_mm + point.dx * exit_mm), tenths(point.y_mm + point.dy * exit_mm)
    told = _told(f"{lead.mark}.exit.{'ab'[number]}", port, point, plug if exit_mm else None, (x, y))
    above = None if height is None else whole_tenths(height)
    return LeadEnd(port, x, y, above, on_top, point.panel, point.deck, told)


def _exit_mm(lead: Lead, port: Port, plug: Plug | None) -> float | Obstacle:
    """How far from the jack's face the lead starts; a captive or soldered one starts at the jack."""
    if port == lead.captive:
        return 0.0
    if plug is None:
        return Obstacle(f"a plug kind in the stock that fits '{port}'", port.thing, missing=True)
    if plug.soldered:
        return 0.0
    if plug.exit_mm is None:
        return Obstacle(f"how far from the jack the cable leaves plug '{plug.name}'", plug.name, missing=True)
    return plug.exit_mm.value


def _told(name: str, port: Port, point: JackPoint, plug: Plug | None, at: tuple[int, int]) -> Answer:
    """`plug` is the one whose cable leaves it away from the jack's face, None where none does."""
    text = f"{millimetres(at[0])}, {millimetres(at[1])}"
    out = None if plug is None or not (point.dx or point.dy) else plug.exit_mm

    def because() -> str:
        if out is None:
            return f"at the jack: {text}"
        return f"{_along(point.x_mm, point.dx, out.value)}, {_along(point.y_mm, point.dy, out.value)} = {text}"

    return Answer(
        name,
        text,
        because,
        point.told,
        lambda: () if plug is None or out is None else (stated(f"{plug.name} leaves at", out),),
        rule="the jack's point, and straight out from its face as far as the plug's cable leaves",
        source=ARITHMETIC,
        unit="mm",
        label=f"leaves {port} at",
    )


def _along(at_mm: float, way: float, out_mm: float) -> str:
    """One coordinate of the way out: nothing to add across it, a share of it from a face that stands askew."""
    if not way:
        return plain(at_mm)
    share = "" if abs(way) == 1 else f" · {abs(way):.4f}"
    return f"{plain(at_mm)} {'+' if way > 0 else '−'} {plain(out_mm)}{share}"
