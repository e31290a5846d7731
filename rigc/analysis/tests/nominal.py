"""A point where DC or AC is read -> the voltage that stands there, and of which supply."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Supply
from rigc.record import Record


class Nominal(Record):
    """`volts` V of kind `current` (`dc`, `ac`) from `supply`."""

    volts: float
    current: str
    supply: Supply


def nominal_at(rig: Rig, power: PowerAssignment, leads: Leads, point: str) -> Nominal | None:
    """At an outlet, a unit or its inlet, or the plug of a lead; None where nothing feeds it, or its setting is not known."""
    lead = leads.of(point)
    if lead is not None:
        found = (nominal_at(rig, power, leads, str(port)) for port in (lead.end, lead.start))
        return next((each for each in found if each is not None), None)
    name, _, jack = point.partition(".")
    if name in rig.supplies:
        return _outlet(rig, power, Port(name, jack))
    feed = power.of(name)
    if feed is None or (jack and not _is_inlet(rig, name, jack)):
        return None
    return Nominal(feed.volts, feed.current, rig.supplies[feed.outlets[0].thing])


def _outlet(rig: Rig, power: PowerAssignment, port: Port) -> Nominal | None:
    supply = rig.supplies[port.thing]
    load = power.loads.get(port)
    if load is not None and load.units:
        return Nominal(load.volts, load.setting.current, supply)
    outlet = outlet_at(rig, port)
    if outlet is None or len(outlet.ratings) != 1:
        return None
    return Nominal(outlet.ratings[0].volts.value, outlet.ratings[0].current, supply)


def _is_inlet(rig: Rig, name: str, jack: str) -> bool:
    inlet = rig.units[name].inlet
    return inlet is not None and inlet.name == jack
