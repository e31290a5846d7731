"""Where a lead goes through the deck: `A14.drop.a` for its start, `A14.drop.b` for its end."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_routes import CableRoutes, Route
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.reasons.inputs import derived, placed
from rigc.diagnostics.figures import millimetres, plain
from rigc.model.rig import Rig
from rigc.traced.reason import Reason

_RULE = (
    "the nearest drop line that no outline covers at the lead's x; of two that are equally near the one nearer to the "
    "other end, then the one in front"
)


def lead_drop(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> Iterator[Reason]:
    """A reason for each end that goes through the deck."""
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        for number, line in enumerate(route.drops if route is not None else ()):
            if route is not None and line is not None:
                yield _drop(rig, placement, lead, route, number, line)


def _drop(rig: Rig, placement: Placement, lead: Lead, route: Route, number: int, line: int) -> Reason:
    end = "ab"[number]
    (x, y), (_, other_y) = route.exits[number], route.exits[1 - number]
    deck = rig.decks[placement.points[(lead.start, lead.end)[number]].deck or ""]
    lines = ", ".join(map(plain, deck.drops_mm))
    exits = [f"{millimetres(across)}, {millimetres(along)}" for across, along in route.exits]
    return Reason(
        f"{lead.mark}.drop.{end}",
        millimetres(line),
        "mm",
        f"of {lines} the nearest to y = {millimetres(y)} that is free at x = {millimetres(x)}: "
        f"|{millimetres(y)} − {millimetres(line)}| = {millimetres(abs(y - line))}; the other end is at y = {millimetres(other_y)}",
        (
            derived("leaves its plug at", exits[number], "mm", f"{lead.mark}.exit.{end}"),
            derived("other end", exits[1 - number], "mm", f"{lead.mark}.exit.{'ba'[number]}"),
            placed(f"drop lines of {deck.name}", lines, deck.declared, "mm"),
        ),
        _RULE,
        "common practice, no source",
    )


REASONS = lead_drop
