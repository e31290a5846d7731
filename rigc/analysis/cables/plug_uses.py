"""The board's leads -> every plug that goes on them, and by kind how many are fitted here and how many come with their lead."""

from __future__ import annotations

from rigc.analysis.cables.lead_status import status
from rigc.analysis.computations.leads import Lead, Leads
from rigc.model.rig import Rig
from rigc.record import Record


class PlugUse(Record):
    """The plugs of one kind by their leads, a lead once for each of its ends: those `fitted` at the bench, and those that
    are `ready`, on leads that are there or bought."""

    kind: str
    fitted: tuple[Lead, ...]
    ready: tuple[Lead, ...]


def plugs_on_leads(rig: Rig, leads: Leads) -> list[tuple[Lead, str]]:
    """Every plug on the board's leads; legs of a Y lead have the one at their outlet in common, soldered ends have none."""
    return [
        (lead, plug)
        for lead, ends in leads.plug_ends
        for _, plug in ends
        if plug is not None and not rig.stock.plugs[plug].soldered
    ]


def plug_uses(rig: Rig, leads: Leads) -> tuple[PlugUse, ...]:
    """The kinds that the board takes, in the order of the stock."""
    plugs = plugs_on_leads(rig, leads)
    found = []
    for kind in rig.stock.plugs:
        own = [(lead, status(rig, lead) == "make") for lead, plug in plugs if plug == kind]
        if own:
            fitted, ready = (tuple(lead for lead, made in own if made is making) for making in (True, False))
            found.append(PlugUse(kind, fitted, ready))
    return tuple(found)
