"""What the compiler chose in a rig -> the statements that would say the same: places, feeds, leads."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.laying.place_statement import place_statement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes, through
from rigc.analysis.power.mends.feed_edits import feed_statement, volts_to_state
from rigc.analysis.results import Results
from rigc.model.jacks import Port
from rigc.model.rig import Rig


def chosen_places(rig: Rig) -> list[str]:
    """A place for each thing that has none in the sources."""
    return [place_statement(place) for place in rig.places.values() if place.chosen]


def chosen_feeds(results: Results) -> dict[tuple[Port, ...], tuple[list[str], str]]:
    """By outlets: the units for which `others from` left them open, and the statement that feeds them from there."""
    power = results.get(PowerAssignment)
    groups: dict[tuple[Port, ...], list[Supplied]] = {}
    for feed in power.feeds:
        if not feed.stated:
            groups.setdefault(feed.outlets, []).append(feed)
    return {
        outlets: ([feed.unit for feed in feeds], _fed(results.rig, power, outlets, feeds))
        for outlets, feeds in groups.items()
    }


def chosen_leads(results: Results, with_plugs: bool) -> list[tuple[Lead, str]]:
    """Each lead that the sources do not number, and its statement."""
    return [
        (
            lead,
            f"{lead.mark} {lead.start} -> {lead.end}"
            f"{chosen_plugs(results.rig, lead) if with_plugs or any(lead.chosen) else ''}"
            f"{chosen_drops(results, lead)}",
        )
        for lead in results.get(Leads).all
        if not lead.stated
    ]


def chosen_plugs(rig: Rig, lead: Lead) -> str:
    """How the lead's line states its plug kinds; empty where that is said already, or one of them is not known."""
    said = dict(rig.lead_wishes.plugs).get(lead.signal)
    if lead.plugs is None or lead.plugs_stated or (all(plug == said for plug in lead.plugs) and not any(lead.chosen)):
        return ""
    return f" {lead.plugs[0]} to {lead.plugs[1]}"


def chosen_drops(results: Results, lead: Lead) -> str:
    """How the lead's line states the drop lines that were chosen for it with a place; empty where it takes the nearest."""
    route = results.get(CableRoutes).routes.get(lead.mark)
    return "" if route is None else through(route)


def _fed(rig: Rig, power: PowerAssignment, outlets: tuple[Port, ...], feeds: list[Supplied]) -> str:
    how = feeds[0].how if feeds[0].how in ("series", "parallel") else "shared" if len(feeds) > 1 else ""
    volts = volts_to_state(rig, power.taps[feeds[0].unit])
    return feed_statement(tuple(feed.unit for feed in feeds), outlets, volts, how)
