"""What a lead would save if both its drop lines were chosen together: `A4.joint-saves`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.deck_boxes import deck_boxes
from rigc.analysis.cables.joint_choice import joint_saving
from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.reasons.inputs import placed
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.traced.reason import Reason


def joint_drop(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> Iterator[Reason]:
    """One reason for each lead that would be shorter."""
    boxes = deck_boxes(rig, placement)
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is None or not route.kind:
            continue
        saving = joint_saving(route, boxes[placement.points[lead.start].deck])
        if saving is None:
            continue
        saved, *lines = map(millimetres, saving)
        own = [millimetres(line) for line in route.drops if line is not None]
        ends = [f"({millimetres(x)}, {millimetres(y)})" for x, y in route.exits]
        inputs = (
            placed(f"{lead.mark} leaves its plugs at", " and ".join(ends), lead.span),
            placed("each end's own nearest lines", " and ".join(own), None, "mm"),
            placed("the best pair of lines", " and ".join(lines), None, "mm"),
        )
        sides = [millimetres(y) for _, y in route.exits]
        formula = f"({_way(sides, own)}) − ({_way(sides, lines)}) = {saved}"
        rule = "each end takes its own nearest drop line; of all pairs the one with the shortest way is told beside it"
        yield Reason(f"{lead.mark}.joint-saves", saved, "mm", formula, inputs, rule, "common practice, no source")


def _way(sides: list[str], lines: list[str]) -> str:
    """The stretches in y: from one end to its line, below the deck to the other line, to the other end."""
    return f"|{sides[0]} − {lines[0]}| + |{lines[0]} − {lines[1]}| + |{lines[1]} − {sides[1]}|"


REASONS = joint_drop
