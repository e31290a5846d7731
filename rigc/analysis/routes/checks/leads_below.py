"""Leads go through the deck and run below it, where there is no room for them.

Why it matters: they bear the board, are crushed at each step, and wear through.
What to do: raise the deck, or lead them over it.
Judged is the thickest cable with the clearance; what hangs there has a rule of its own.
Source: geometry on stated sizes.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import joined
from rigc.model.deck import Deck
from rigc.model.rig import Rig

KIND = Kind(
    "leads-below",
    Level.WARNING,
    __doc__,
    "thickness of each lead that runs below a deck ≤ its clearance",
    "geometry on stated sizes",
)


def leads_below(rig: Rig, leads: Leads, routes: CableRoutes, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each deck."""
    below: dict[str, list[Lead]] = {}
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is not None and route.kind == "under":
            below.setdefault(placement.points[lead.start].deck or "", []).append(lead)
    for name, there in below.items():
        deck = rig.decks.get(name)
        if deck is not None and deck.clearance_mm is not None:
            room = deck.clearance_mm.value
            tight = [(thick, lead) for lead in there if (thick := _thickness(rig, lead)) > room or room == 0]
            if tight:
                yield _told(deck, room, tight)


def _thickness(rig: Rig, lead: Lead) -> float:
    """How thick its cable is, in mm; 0 where that is not stated."""
    stock = rig.stock.cables.get(lead.cable or "")
    return 0.0 if stock is None or stock.outer_mm is None else stock.outer_mm.value


def _told(deck: Deck, room: float, tight: list[tuple[float, Lead]]) -> Diagnostic:
    assert deck.clearance_mm is not None
    marks = [lead.mark for _, lead in tight]
    thick, thickest = max(tight, key=lambda each: each[0])
    size = f"; the thickest, {thickest.mark}, is {thick:g} mm" if thick else ""
    return KIND.at(
        deck.clearance_mm.span,
        f"{joined(marks)} {'runs' if len(marks) == 1 else 'run'} below '{deck.name}', which leaves {room:g} mm there{size}",
        subject=(deck.name, *marks),
        label="all the room there is",
        also=(Label(thickest.span, thickest.mark),),
        numbers=(Number("clearance", room, "mm"), Number("thickest", thick, "mm")),
        help=f"raise the deck by {thick - room:g} mm or more, or lead them over it: write `over` behind them in the leads block"
        if thick
        else "raise the deck, or lead them over it: write `over` behind them in the leads block",
    )


CHECK = leads_below
