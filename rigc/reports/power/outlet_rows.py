"""A supply's outlets -> the rows of the power one-line: one for each lead, one for each outlet without any."""

from __future__ import annotations

from typing import Any

from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class OutletRow(Record):
    """One line of the drawing. `outlet` is empty in the further rows of an outlet that feeds several units.

    `end` names the unit (or `spare`, or what it is reserved for); `used` is whether a lead is plugged in, `ac` whether it
    carries AC, `turned` whether + and − change places on the way. `trunk` is the number of the Y lead whose leg this is.
    `adaptors` are those in this lead alone. Outlets that work as one are a `pair`: its adaptor with the volts behind it,
    and the outlets that belong to it.
    """

    outlet: str
    setting: str
    load: str
    common: str
    mark: str
    end: str
    used: bool
    ac: bool
    trunk: str = ""
    adaptors: tuple[str, ...] = ()
    turned: bool = False
    pair: tuple[str, ...] = ()
    joined: tuple[Port, ...] = ()


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
        return [OutletRow(port.jack, setting, f"{load.rating_ma:g} mA", common, "", end, False, current == "ac")]
    return [
        OutletRow(
            port.jack if at == 0 else "",
            setting if at == 0 else "",
            told if at == 0 else "",
            common,
            ", ".join(_mark(lead) for lead in _leads(leads, port, unit)),
            unit,
            True,
            current == "ac",
            **_joining(power, leads, port, load, unit),
        )
        for at, unit in enumerate(load.units)
    ]


def _leads(leads: Leads, port: Port, unit: str) -> list[Lead]:
    return [lead for lead in leads.at(port) if unit in (lead.start.thing, lead.end.thing)]


def _mark(lead: Lead) -> str:
    """The number, and of a lead of a series pair whether it comes from the lower or the upper outlet."""
    return " ".join((lead.mark, *(via.end for via in lead.make.via if via.end)))


def _joining(power: PowerAssignment, leads: Leads, port: Port, load: OutletLoad, unit: str) -> dict[str, Any]:
    """What lies between outlet and unit beside a straight lead."""
    makes = [lead.make for lead in _leads(leads, port, unit)]
    vias = {each.kind: each.mark for make in makes for each in make.via}
    reversed_ = tuple(", ".join(filter(None, (make.turned, make.polarity))) for make in makes if make.turned)
    feed = power.of(unit)
    pair: tuple[str, ...] = ()
    if load.how in ("series", "parallel") and feed is not None:
        pair = (f"{vias.pop(load.how, '')} {load.how}".strip(), f"{feed.volts:g} V {feed.current.upper()}")
    return {
        "trunk": next((make.leg_of for make in makes if make.leg_of), ""),
        "adaptors": tuple(f"{mark} {kind}".strip() for kind, mark in vias.items()) + reversed_,
        "turned": bool(reversed_) or "reversing" in vias,
        "pair": pair,
        "joined": load.joined if pair else (),
    }
