"""What the compiler chose in a rig -> the statements that would say the same: places, feeds, leads."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.power_assignment import PowerAssignment, Supplied
from rigc.analysis.results import Results
from rigc.model.deck import Place
from rigc.model.jacks import Port
from rigc.model.rig import Rig


def chosen_places(rig: Rig) -> list[str]:
    """A place for each thing that has none in the sources."""
    return [_placed(place) for place in rig.places.values() if place.chosen]


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
        (lead, f"{lead.mark} {lead.start} -> {lead.end}{chosen_plugs(results.rig, lead) if with_plugs else ''}")
        for lead in results.get(Leads).all
        if not lead.stated
    ]


def chosen_plugs(rig: Rig, lead: Lead) -> str:
    """How the lead's line states its plug kinds; empty where that is said already, or one of them is not known."""
    said = dict(rig.lead_wishes.plugs).get(lead.signal)
    if lead.plugs is None or lead.plugs_stated or all(plug == said for plug in lead.plugs):
        return ""
    return f" {lead.plugs[0]} to {lead.plugs[1]}"


def _placed(place: Place) -> str:
    under = " under" if place.under else ""
    degrees = place.turned + place.skew_deg
    turned = f" turned {degrees:g} deg" if degrees else ""
    tier = f" on {place.tier}" if place.tier else ""
    jacks = f" jacks {place.jacks}" if place.jacks else ""
    return f"{place.thing}{under} at {place.x_mm:.10g}, {place.y_mm:.10g} mm{turned}{tier}{jacks}"


def _fed(rig: Rig, power: PowerAssignment, outlets: tuple[Port, ...], feeds: list[Supplied]) -> str:
    units = ", ".join(feed.unit for feed in feeds)
    setting = power.taps[feeds[0].unit].settings[0]
    several = any(
        outlet is not None and len(outlet.ratings) > 1
        for port in outlets
        for outlet in (rig.supplies[port.thing].outlet(port.jack),)
    )
    volts = f" at {setting.volts.value:g} V" if several else ""
    how = feeds[0].how if feeds[0].how in ("series", "parallel") else "shared" if len(feeds) > 1 else ""
    return f"{units} from {', '.join(map(str, outlets))}{volts}{f' {how}' if how else ''}"
