"""Feeds, leads and stated adaptors -> every Y, series, parallel, reversing and size lead, with number, plugs and label."""

from __future__ import annotations

from rigc.analysis.cables.lead_numbers import in_order, mark_parts
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.power_assignment import PowerAssignment, Supplied
from rigc.analysis.power.power_tap import outlet_at
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Adaptor
from rigc.record import Record


class SpecialLead(Record):
    """A lead or adaptor that must not get into the general bag: `kind` is Y, series, parallel, reversing or size.

    `outlets` is where it takes its power and `units` whom it feeds; `plugs` are the connectors at its outlets' and its
    units' ends as words (`?` where not stated), `label` the text for both its ends. `stated`: the source numbers it.
    """

    mark: str
    kind: str
    outlets: tuple[Port, ...]
    units: tuple[str, ...]
    plugs: tuple[str, str]
    label: str
    stated: bool


class SpecialLeads(Record):
    """All of them, in the order of their numbers."""

    all: tuple[SpecialLead, ...]


def special_leads(rig: Rig, power: PowerAssignment, leads: Leads) -> SpecialLeads:
    """What the source numbers, then what its feeds need beyond: pairs get the next free Y number, a reversing lead is the DC lead itself."""
    found = [_stated(rig, power, adaptor) for adaptor in rig.lead_wishes.adaptors]
    have = {(each.kind, name) for each in found for name in each.units}
    number = _highest(rig)
    for feed in power.feeds:
        if feed.how in ("series", "parallel") and (feed.how, feed.unit) not in have:
            number += 1
            found.append(_special(rig, f"Y{number}", feed.how, feed.outlets, (feed.unit,), feed, False))
        if feed.reversed and ("reversing", feed.unit) not in have:
            marks = [
                each.mark
                for port in feed.outlets
                for each in leads.at(port)
                if feed.unit in (each.start.thing, each.end.thing)
            ]
            found += [_special(rig, mark, "reversing", feed.outlets, (feed.unit,), feed, False) for mark in marks]
    found += _branched(rig, power, leads)
    return SpecialLeads(tuple(sorted(found, key=lambda each: in_order(each.mark))))


def _stated(rig: Rig, power: PowerAssignment, adaptor: Adaptor) -> SpecialLead:
    feed = power.of(adaptor.unit)
    outlets = () if feed is None else feed.outlets
    return _special(rig, adaptor.mark, adaptor.kind, outlets, (adaptor.unit,), feed, True)


def _branched(rig: Rig, power: PowerAssignment, leads: Leads) -> list[SpecialLead]:
    """One for each outlet that feeds several units: the number that its legs share."""
    legs: dict[str, list[tuple[Port, str]]] = {}
    for lead in leads.all:
        if lead.leg_of is not None:
            outlet, inlet = (lead.start, lead.end) if lead.start in power.loads else (lead.end, lead.start)
            legs.setdefault(lead.leg_of, []).append((outlet, inlet.thing))
    return [
        _special(rig, mark, "Y", (each[0][0],), tuple(unit for _, unit in each), power.of(each[0][1]), False)
        for mark, each in legs.items()
    ]


def _special(
    rig: Rig,
    mark: str,
    kind: str,
    outlets: tuple[Port, ...],
    units: tuple[str, ...],
    feed: Supplied | None,
    stated: bool,
) -> SpecialLead:
    volts = "" if feed is None else f" {feed.volts:g} V {feed.current.upper()}"
    where = " + ".join(str(port) for port in outlets) or "?"
    warning = ", POLARITY TURNED" if kind == "reversing" else ""
    return SpecialLead(
        mark,
        kind,
        outlets,
        units,
        (_outlet_plugs(rig, outlets), _unit_plugs(rig, units)),
        f"{mark} {kind.upper()}{volts} {where} to {' + '.join(units)} ONLY{warning}",
        stated,
    )


def _outlet_plugs(rig: Rig, outlets: tuple[Port, ...]) -> str:
    kinds = [str(each.connector or "?") for port in outlets if (each := outlet_at(rig, port)) is not None]
    return _counted(kinds)


def _unit_plugs(rig: Rig, units: tuple[str, ...]) -> str:
    return _counted([str(inlet.connector) if (inlet := rig.units[name].inlet) is not None else "?" for name in units])


def _counted(kinds: list[str]) -> str:
    parts = [f"{kinds.count(kind)} of {kind}" if kinds.count(kind) > 1 else kind for kind in dict.fromkeys(kinds)]
    return ", ".join(parts) or "?"


def _highest(rig: Rig) -> int:
    marks = [each.mark for each in rig.lead_wishes.adaptors] + [mark for mark, _ in rig.lead_wishes.retired]
    marks += [lead.mark for lead in rig.lead_wishes.leads]
    parts = [parts for mark in marks if (parts := mark_parts(mark)) is not None]
    return max((int(number) for letter, number, _ in parts if letter == "Y"), default=0)


COMPUTE = special_leads
