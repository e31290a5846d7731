"""Feeds, leads and stated adaptors -> every Y, series, parallel, reversing and size lead, with number, plugs, label and
markers: `X3.markers`."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.lead_make import REVERSED
from rigc.analysis.leads.lead_numbers import adaptors_of, in_order
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.previous import Previous, followed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found as counted
from rigc.traced.reason import PRACTICE
from rigc.traced.units import COUNT


class SpecialLead(Record):
    """A lead or adaptor that must not get into the general bag: `kind` is Y, series, parallel, reversing or size.

    `outlets` is where it takes its power and `units` whom it feeds; `inlets` are theirs; `leads` are the numbers of the
    leads that it is, or that go into it. `plugs` are the connectors at its outlets' and its units' ends as words (`?` where not stated);
    `lines` is the text for its ends, line by line. `stated`: the source numbers it. `itself`: it is that one lead and bears
    that lead's labels: it has no lines, and no `markers` beside those of its leads.
    """

    mark: str
    kind: str
    outlets: tuple[Port, ...]
    units: tuple[str, ...]
    inlets: tuple[Port, ...]
    leads: tuple[str, ...]
    plugs: tuple[str, str]
    lines: tuple[str, ...]
    stated: bool
    itself: bool
    markers: Figure | None

    @property
    def label(self) -> str:
        """The text for its ends in one line."""
        return " ".join(self.lines)


class SpecialLeads(Record):
    """All of them, in the order of their numbers."""

    all: tuple[SpecialLead, ...]


def special_leads(rig: Rig, power: PowerAssignment, leads: Leads, previous: Previous) -> SpecialLeads:
    """The adaptors that the source numbers and those that its feeds need beyond, Y leads, and leads that reverse."""
    stated = {each.mark for each in rig.lead_wishes.adaptors}
    found = []
    for unit, adaptors in adaptors_of(rig, power, followed(rig, previous)).items():
        feed = power.of(unit)
        outlets = () if feed is None else feed.outlets
        for each in adaptors:
            marks = tuple(lead.mark for lead in leads.all if each.mark in {via.mark for via in lead.make.via})
            found.append(_special(rig, each.mark, each.kind, outlets, (unit,), marks, feed, each.mark in stated))
    for lead in leads.all:
        if lead.make.turned == REVERSED:
            outlet, inlet = _outlet_first(power, lead)
            feed = power.of(inlet.thing)
            own = (lead.mark,)
            found.append(
                _reversing(
                    rig,
                    lead,
                    _special(rig, lead.mark, "reversing", (outlet,), (inlet.thing,), own, feed, lead.stated, True),
                )
            )
    found += _branched(rig, power, leads)
    return SpecialLeads(tuple(sorted(found, key=lambda each: in_order(each.mark))))


def _reversing(rig: Rig, lead: Lead, told: SpecialLead) -> SpecialLead:
    """Before a size adaptor it ends as it begins."""
    sized = any(each.kind == "size" for each in lead.make.via)
    plugs = _outlet_plugs(rig, told.outlets)
    return told.replace(plugs=(plugs, plugs)) if sized else told


def _outlet_first(power: PowerAssignment, lead: Lead) -> tuple[Port, Port]:
    return (lead.start, lead.end) if lead.start in power.loads else (lead.end, lead.start)


def _branched(rig: Rig, power: PowerAssignment, leads: Leads) -> list[SpecialLead]:
    """One for each outlet that feeds several units: the number that its legs share."""
    legs: dict[str, list[Lead]] = {}
    for lead in leads.all:
        if lead.leg_of is not None:
            legs.setdefault(lead.leg_of, []).append(lead)
    found = []
    for mark, each in legs.items():
        ends = [_outlet_first(power, lead) for lead in each]
        units = tuple(inlet.thing for _, inlet in ends)
        marks = tuple(lead.mark for lead in each)
        found.append(_special(rig, mark, "Y", (ends[0][0],), units, marks, power.of(units[0]), False))
    return found


def _special(
    rig: Rig,
    mark: str,
    kind: str,
    outlets: tuple[Port, ...],
    units: tuple[str, ...],
    leads: tuple[str, ...],
    feed: Supplied | None,
    stated: bool,
    itself: bool = False,
) -> SpecialLead:
    volts = "" if feed is None else f" {feed.volts:g} V {feed.current.upper()}"
    lower = None if feed is None else feed.lower
    where = " + ".join(f"{port} (LOWER)" if port == lower else str(port) for port in outlets) or "?"
    warning = ("POLARITY TURNED",) if kind == "reversing" else ()
    lines = (f"{mark} {kind.upper()}{volts}", where, f"to {' + '.join(units)} ONLY{',' if warning else ''}", *warning)
    return SpecialLead(
        mark,
        kind,
        outlets,
        units,
        tuple(Port(name, inlet.name) for name in units if (inlet := rig.units[name].inlet) is not None),
        leads,
        (_outlet_plugs(rig, outlets), _unit_plugs(rig, units)),
        () if itself else lines,
        stated,
        itself,
        None if itself else _markers(mark, kind, " ".join(lines)),
    )


def _markers(mark: str, kind: str, label: str) -> Figure:
    count = 1 if kind == "Y" else 2
    return known_figure(
        f"{mark}.markers",
        counted(count, lambda: "1 at the outlet" if kind == "Y" else "2 ends = 2"),
        COUNT,
        mentioned(kind, label),
        rule="a Y lead bears one more at its outlet, an adaptor one at each end",
        source=PRACTICE,
    )


def _outlet_plugs(rig: Rig, outlets: tuple[Port, ...]) -> str:
    kinds = [str(each.connector or "?") for port in outlets if (each := outlet_at(rig, port)) is not None]
    return _counted(kinds)


def _unit_plugs(rig: Rig, units: tuple[str, ...]) -> str:
    return _counted([str(inlet.connector) if (inlet := rig.units[name].inlet) is not None else "?" for name in units])


def _counted(kinds: list[str]) -> str:
    parts = [f"{kinds.count(kind)} of {kind}" if kinds.count(kind) > 1 else kind for kind in dict.fromkeys(kinds)]
    return ", ".join(parts) or "?"


COMPUTE = special_leads
