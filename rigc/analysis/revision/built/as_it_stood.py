"""A board that stands and its rig with one unit exchanged -> that rig, all else staying where it is and plugged as it is."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.leads.lead_plugs import fitting_plugs, socket
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.results import Results
from rigc.analysis.revision.built.as_measured import built_lengths
from rigc.model.fact import Fact
from rigc.model.jacks import Jack, Port
from rigc.model.records import AsBuilt
from rigc.model.rig import Rig
from rigc.model.wishes import Feed, LeadFacts
from rigc.record import Record


class Standing(Record):
    """A board as it stands, what was measured on it, and whose jacks become whose: `out` is exchanged for `into`."""

    results: Results
    as_built: tuple[AsBuilt, ...]
    out: str
    into: str
    jacks: dict[str, str]

    def name(self, thing: str) -> str:
        """What stands where that thing stood."""
        return self.into if thing == self.out else thing

    def port(self, port: Port) -> Port | None:
        """Where the plug goes that was in a jack; None if there is no jack for it."""
        if port.thing != self.out:
            return port
        jack = self.jacks.get(port.jack)
        return None if jack is None else Port(self.into, jack)


def as_it_stood(standing: Standing, rig: Rig) -> Rig:
    """The exchanged `rig` with the places, feeds, lead numbers and plugs that the compiler chose for the board that stands.

    Without this it would be planned anew, and its other things would move. A plug that does not go into the
    substitute's jack is not kept: the first kind of the stock that does stands there.
    """
    places = {standing.name(name): place for name, place in standing.results.rig.places.items()}
    kept = {name: place.replace(thing=name) for name, place in places.items() if name not in rig.places}
    feeds = (*rig.power.feeds, *_feeds(standing, rig))
    fixed: Rig = rig.replace(places={**rig.places, **kept}, power=rig.power.replace(feeds=feeds))
    return with_leads(fixed, tuple(_leads(standing, fixed)))


def with_lengths(standing: Standing, rig: Rig) -> Rig:
    """The exchanged rig in which the leads that were at the exchanged unit are as long as they were: it got no new ones."""
    lengths = built_lengths(standing.results, standing.as_built)
    mine = {
        lead.mark
        for lead in standing.results.get(Leads).all
        if standing.out in (lead.start.thing, lead.end.thing) and lead.captive is None
    }
    return with_leads(
        rig,
        tuple(
            lead.replace(made_mm=lengths[lead.mark]) if lead.mark in mine & lengths.keys() else lead
            for lead in rig.lead_wishes.leads
        ),
    )


def with_feeds(rig: Rig, feeds: tuple[Feed, ...]) -> Rig:
    """The rig fed so. A stated lead that no feed needs any more stays in its outlet, and keeps its number, where that outlet
    feeds another unit now; else it goes."""
    changed: Rig = rig.replace(power=rig.power.replace(feeds=feeds))
    needed = dict.fromkeys(_powered(changed))
    leads = []
    for lead in rig.lead_wishes.leads:
        pair = frozenset((lead.start, lead.end))
        outlet = next((port for port in (lead.start, lead.end) if port.thing in rig.supplies), None)
        if outlet is None or pair in needed:
            needed.pop(pair, None)
            leads.append(lead)
            continue
        inlet = next((port for each in needed if outlet in each for port in each if port != outlet), None)
        if inlet is not None:
            needed.pop(frozenset((outlet, inlet)))
            leads.append(lead.replace(start=outlet, end=inlet, plugs=None))
    return with_leads(changed, tuple(leads))


def with_leads(rig: Rig, leads: tuple[LeadFacts, ...]) -> Rig:
    """The rig with these leads stated."""
    changed: Rig = rig.replace(lead_wishes=rig.lead_wishes.replace(leads=leads))
    return changed


def _feeds(standing: Standing, rig: Rig) -> list[Feed]:
    """One for each choice of outlets, with all units on it."""
    stated = {name for feed in rig.power.feeds for name in feed.units}
    groups: dict[tuple[Port, ...], list[Supplied]] = {}
    for feed in standing.results.get(PowerAssignment).feeds:
        name = standing.name(feed.unit)
        if not feed.stated and name not in stated and rig.units[name].powered:
            groups.setdefault(feed.outlets, []).append(feed)
    return [
        Feed(
            tuple(standing.name(feed.unit) for feed in group),
            outlets,
            Fact(group[0].volts, f"{group[0].volts:g} V", group[0].span) if group[0].how != "series" else None,
            group[0].how,
            group[0].reversed,
            group[0].span,
            group[0].lower,
        )
        for outlets, group in groups.items()
    ]


def _leads(standing: Standing, rig: Rig) -> Iterator[LeadFacts]:
    """The leads of the board that stands, as far as the exchanged rig has a use for them, and others that it states."""
    wanted = {frozenset((link.start, link.end)) for link in rig.connections} | set(_powered(rig))
    stated = {lead.mark: lead for lead in rig.lead_wishes.leads}
    for lead in standing.results.get(Leads).all:
        facts = stated.pop(lead.mark, None)
        start, end = standing.port(lead.start), standing.port(lead.end)
        if start is None or end is None or (facts is None and frozenset((start, end)) not in wanted):
            continue
        if _goes_with_its_unit(standing, lead) or any(
            _captive(rig, port) for port in {start, end} - {lead.start, lead.end}
        ):
            continue
        plugs = _plugs(rig, lead, start, end)
        yield _facts(lead, start, end, plugs) if facts is None else facts.replace(plugs=plugs)
    yield from stated.values()


def _goes_with_its_unit(standing: Standing, lead: Lead) -> bool:
    return lead.captive is not None and lead.captive.thing == standing.out


def _captive(rig: Rig, port: Port) -> bool:
    """Whether a lead grows out of that jack, so that none goes in."""
    jack = socket(rig, port)
    return jack is not None and jack.captive_mm is not None


def _plugs(rig: Rig, lead: Lead, start: Port, end: Port) -> tuple[str, str] | None:
    first, second = (
        plug if port == before else _fitting(rig, port, plug)
        for plug, port, before in zip(lead.ends, (start, end), (lead.start, lead.end), strict=True)
    )
    return None if first is None or second is None else (first, second)


def _fitting(rig: Rig, port: Port, plug: str | None) -> str | None:
    jack = socket(rig, port)
    kinds = () if not isinstance(jack, Jack) else fitting_plugs(rig, jack.connector)
    names = [kind.name for kind in kinds]
    return plug if plug in names else next(iter(names), plug)


def _powered(rig: Rig) -> Iterator[frozenset[Port]]:
    for feed in rig.power.feeds:
        for unit in (rig.units[name] for name in feed.units):
            if unit.inlet is not None:
                yield from (frozenset((outlet, Port(unit.name, unit.inlet.name))) for outlet in feed.outlets)


def _facts(lead: Lead, start: Port, end: Port, plugs: tuple[str, str] | None) -> LeadFacts:
    return LeadFacts(
        lead.mark,
        start,
        end,
        plugs,
        lead.cable,
        lead.run,
        lead.slack_mm,
        lead.made_mm,
        lead.premade,
        lead.made_in,
        lead.span,
        lead.span,
        through_mm=lead.through_mm,
    )
