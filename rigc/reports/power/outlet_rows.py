"""A supply's outlets -> the rows of the power one-line: one for each lead, one for each outlet without any."""

from __future__ import annotations

from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class OutletRow(Record):
    """One line of the drawing. `outlet` is empty in the further rows of an outlet that feeds several units.

    `end` names the unit (or `spare`, or what it is reserved for); `also` is what is to be said beside it: how outlets
    are joined, a reversing lead. `used` is whether a lead is plugged in, `ac` whether it carries AC.
    """

    outlet: str
    setting: str
    load: str
    common: str
    mark: str
    end: str
    also: str
    used: bool
    ac: bool


def outlet_rows(rig: Rig, power: PowerAssignment, leads: Leads, supply: str) -> tuple[OutletRow, ...]:
    """The rows of one supply, in the order of its outlets."""
    return tuple(
        row
        for port, load in power.loads.items()
        if port.thing == supply
        for row in _rows(rig, power, leads, port, load)
    )


def _rows(rig: Rig, power: PowerAssignment, leads: Leads, port: Port, load: OutletLoad) -> list[OutletRow]:
    outlet = outlet_at(rig, port)
    common = outlet.common or "" if outlet is not None else ""
    current = load.setting.current
    setting = f"{load.volts:g} V {current.upper()}"
    amount = "?" if load.load_ma is None else f"{load.load_ma:g}"
    told = f"{amount}/{load.rating_ma:g} mA"
    if not load.units:
        end = f"reserved: {power.reserved[port]}" if port in power.reserved else "spare"
        return [OutletRow(port.jack, setting, f"{load.rating_ma:g} mA", common, "", end, "", False, current == "ac")]
    return [
        OutletRow(
            port.jack if at == 0 else "",
            setting if at == 0 else "",
            told if at == 0 else "",
            common,
            ", ".join(f"{lead.mark} {lead.make.signs}".rstrip() for lead in _leads(leads, port, unit)),
            unit,
            _also(leads, port, load, unit),
            True,
            current == "ac",
        )
        for at, unit in enumerate(load.units)
    ]


def _leads(leads: Leads, port: Port, unit: str) -> list[Lead]:
    return [lead for lead in leads.at(port) if unit in (lead.start.thing, lead.end.thing)]


def _also(leads: Leads, port: Port, load: OutletLoad, unit: str) -> str:
    """A leg of a Y lead is drawn as one, and its number bears the sign."""
    words = []
    makes = [lead.make for lead in _leads(leads, port, unit)]
    vias = {each.kind: each.mark for make in makes for each in make.via}
    if load.how:
        others = ", ".join(str(each) for each in load.joined if each != port)
        words.append(f"{load.how} {vias.pop(load.how, '')}".rstrip() + f" with {others}")
    words += [make.turned for make in makes if make.turned]
    words += [f"{kind} adaptor {mark}" for kind, mark in vias.items()]
    return ", ".join(dict.fromkeys(words))
