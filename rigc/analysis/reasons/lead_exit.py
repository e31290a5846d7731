"""Where a lead leaves its plugs: `A14.exit.a` at its start, `A14.exit.b` at its end."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.reasons.inputs import derived, stated
from rigc.diagnostics.figures import millimetres, plain
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Input, Reason


def lead_exit(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> Iterator[Reason]:
    """Two reasons for each lead that has a route."""
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        for number, exit_point in enumerate(route.exits if route is not None else ()):
            yield _exit(rig, placement, lead, number, exit_point)


def _exit(rig: Rig, placement: Placement, lead: Lead, number: int, at: tuple[int, int]) -> Reason:
    port, plug = (lead.start, lead.end)[number], rig.stock.plugs.get(lead.ends[number] or "")
    point = placement.points[port]
    x, y = plain(point.x_mm), plain(point.y_mm)
    value = f"{millimetres(at[0])}, {millimetres(at[1])}"
    inputs: tuple[Input, ...] = (derived(str(port), f"{x}, {y}", "mm", f"{port}.point"),)
    formula = f"at the jack: {value}"
    if plug is not None and port != lead.captive and not plug.soldered and (point.dx or point.dy):
        inputs += (stated(f"{plug.name} leaves at", plug.exit_mm),)
        out = plug.exit_mm.value if plug.exit_mm is not None else 0.0
        formula = f"{_along(x, point.dx, out)}, {_along(y, point.dy, out)} = {value}"
    rule = "the jack's point, and straight out from its face as far as the plug's cable leaves"
    return Reason(f"{lead.mark}.exit.{'ab'[number]}", value, "mm", formula, inputs, rule, ARITHMETIC)


def _along(at: str, way: float, out_mm: float) -> str:
    """One coordinate of the way out: nothing to add across it, a share of it from a face that stands askew."""
    if not way:
        return at
    share = "" if abs(way) == 1 else f" · {abs(way):.4f}"
    return f"{at} {'+' if way > 0 else '−'} {plain(out_mm)}{share}"


REASONS = lead_exit
