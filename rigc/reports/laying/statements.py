"""Chosen places -> the statements that would keep them, to be pasted into the source."""

from __future__ import annotations

from rigc.analysis.laying.place_statement import place_statement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, through
from rigc.model.rig import Rig


def chosen_on_leads(leads: Leads, routes: CableRoutes) -> tuple[str, ...]:
    """A whole `leads { ... }` block for those with plugs that were chosen with places, and those that go through the deck elsewhere than at
    the nearest lines; none where there are none."""
    found = []
    for lead in leads.all:
        plugs = f" {lead.plugs[0]} to {lead.plugs[1]}" if lead.plugs is not None and any(lead.chosen) else ""
        drops = through(routes.routes[lead.mark]) if lead.mark in routes.routes else ""
        if plugs or drops:
            found.append(f"  {lead.mark} {lead.start} -> {lead.end}{plugs}{drops}")
    head = "leads {", "  # in place of the lead's own line, or what stands behind its ends added to it"
    return (*head, *found, "}") if found else ()


def chosen_statements(rig: Rig) -> tuple[str, ...]:
    """A whole `place { ... }` block, line by line; a comment where every place is stated."""
    lines = [f"  {place_statement(place)}" for place in rig.places.values() if place.chosen]
    for room in rig.reserved_rooms:
        if room.chosen:
            what = "" if room.what == "reserved" else f' "{room.what}"'
            size, at = f"{room.width_mm:g} x {room.depth_mm:g} mm", f"{room.x_mm:g}, {room.y_mm:g} mm"
            lines += ["  # in place of the line that reserves it without a place", f"  reserve {size} at {at}{what}"]
    return ("place {", *lines, "}") if lines else ("# every place is stated",)
