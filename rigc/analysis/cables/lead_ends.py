"""A lead, the placement and the stock -> where each end leaves its plug, in tenths of a millimetre, or what stands in the way."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead
from rigc.analysis.computations.placement import JackPoint, Placement
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class LeadEnd(Record):
    """Where a lead leaves its plug, in tenths of a millimetre; `above` is its jack's height over the deck's top.

    It is `on_top` of the deck, or below it, or at a panel. `above` is None where the height is not stated.
    """

    port: Port
    x: int
    y: int
    above: int | None
    on_top: bool
    panel: bool
    deck: str | None


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
    start = _end(rig, placement, lead, lead.start, lead.ends[0])
    end = _end(rig, placement, lead, lead.end, lead.ends[1])
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


def _end(rig: Rig, placement: Placement, lead: Lead, port: Port, plug: str | None) -> LeadEnd | Obstacle:
    point = placement.point(port)
    if point is None:
        return Obstacle(placement.why_not(port) or f"where '{port}' is", port.thing, missing=True)
    exit_mm = _exit_mm(rig, lead, port, plug)
    if isinstance(exit_mm, Obstacle):
        return exit_mm
    above = None if point.height_mm is None else tenths(point.height_mm + point.raised_mm)
    on_top = not point.under and not point.panel
    if on_top and above is None:
        return Obstacle(f"how high '{port}' is", port.thing, missing=True)
    x, y = _exit(point, exit_mm)
    return LeadEnd(port, x, y, above, on_top, point.panel, point.deck)


def _exit_mm(rig: Rig, lead: Lead, port: Port, plug: str | None) -> float | Obstacle:
    """How far from the jack's face the lead starts; a captive or soldered one starts at the jack."""
    if port == lead.captive:
        return 0.0
    if plug is None:
        return Obstacle(f"a plug kind in the stock that fits '{port}'", port.thing, missing=True)
    kind = rig.stock.plugs[plug]
    if kind.soldered:
        return 0.0
    if kind.exit_mm is None:
        return Obstacle(f"how far from the jack the cable leaves plug '{plug}'", plug, missing=True)
    return kind.exit_mm.value


def _exit(point: JackPoint, exit_mm: float) -> tuple[int, int]:
    return tenths(point.x_mm + point.dx * exit_mm), tenths(point.y_mm + point.dy * exit_mm)
