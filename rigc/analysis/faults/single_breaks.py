"""Leads, units and feeds -> every single thing that can break, and what is gone with it.

A unit without power is gone if it mutes, or latches, or does not say what it does; a broken one passes nothing. That a lead shorts a
supply is not looked at: the outlet it hangs on is then as good as broken.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.least_silent_way import stops_sound
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection
from rigc.record import Record

Part = tuple[str, str]
"""What can be taken out of the ways of sound: (`lead`, its number), (`radio`, the jack that receives) or (`thing`, its name)."""

LEAD, RADIO, UNIT, OUTLET, FEED, SUPPLY, STRIP, BATTERY, SOURCE, LISTENER = (
    "lead", "radio", "unit", "outlet", "power lead", "supply", "mains strip", "battery", "source", "listener",
)  # fmt: skip


class Break(Record):
    """One thing that is broken: its kind, its name (`key` is that of its figures), and the parts that pass no sound then. `dark` are the units without power;
    `unsure` those of them that do not say what they do then, and are taken to pass nothing; `mains` is whether a supply takes mains."""

    kind: str
    key: str
    gone: frozenset[Part]
    dark: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()
    mains: bool = True

    @property
    def name(self) -> str:
        """What it is called on a sheet; what can't be told apart by ear is named together."""
        if self.kind in (SUPPLY, STRIP):
            return f"{self.key} or its {'mains lead' if self.mains else 'battery'}"
        if self.kind == RADIO:
            return f"the radio to {self.key}"
        return f"the battery of {self.dark[0]}" if self.kind == BATTERY else self.key


class SingleBreaks(Record):
    """All of them: along the sound first, then along the power from the unit to the mains."""

    all: tuple[Break, ...]


def single_breaks(rig: Rig, leads: Leads, power: PowerAssignment) -> SingleBreaks:
    """Each lead, unit, outlet, power lead, supply with its mains lead, strip, battery, instrument, amp and desk."""
    return SingleBreaks((*_on_the_way(rig, leads), *_power(rig, leads, power)))


def part_of(leads: Leads, connection: Connection) -> Part:
    """The lead of a connection; a radio has none."""
    ends = {connection.start, connection.end}
    found = (lead for lead in leads.at(connection.start) if {lead.start, lead.end} == ends)
    lead = next(found, None)
    return ("radio", str(connection.end)) if lead is None else ("lead", lead.mark)


def _on_the_way(rig: Rig, leads: Leads) -> Iterator[Break]:
    for name in rig.instruments:
        yield Break(SOURCE, name, frozenset((("thing", name),)))
    for kind, mark in dict.fromkeys(part_of(leads, each) for each in rig.connections if each.signal == "audio"):
        yield Break(LEAD if kind == "lead" else RADIO, mark, frozenset(((kind, mark),)))
    for unit in used_units(rig):
        if unit.kind == "unit":
            yield Break(UNIT, unit.name, frozenset((("thing", unit.name),)))
    for unit in rig.units.values():
        if unit.kind != "unit":
            yield Break(LISTENER, unit.name, frozenset((("thing", unit.name),)))


def _power(rig: Rig, leads: Leads, power: PowerAssignment) -> Iterator[Break]:
    fed: dict[Port, list[str]] = {}
    for feed in power.feeds:
        for outlet in feed.outlets:
            fed.setdefault(outlet, []).append(feed.unit)
    for unit in used_units(rig):
        if unit.battery is not None and unit.battery.only:
            yield _dark(rig, BATTERY, f"{unit.name}.battery", (unit.name,))
    for lead in leads.all:
        if lead.signal in ("dc", "ac"):
            outlet, inlet = (lead.start, lead.end) if lead.start in power.loads else (lead.end, lead.start)
            if inlet.thing in fed.get(outlet, ()):
                yield _dark(rig, FEED, lead.mark, (inlet.thing,))
    for outlet, units in fed.items():
        yield _dark(rig, OUTLET, str(outlet), units)
    on_supply: dict[str, list[str]] = {}
    for outlet, units in fed.items():
        on_supply.setdefault(outlet.thing, []).extend(units)
    for supply, units in on_supply.items():
        yield _dark(rig, SUPPLY, supply, units).replace(mains=rig.supplies[supply].takes_mains)
    for strip in rig.mains_strips:
        plugged = [name for name, into, _ in rig.power.plugged if into == strip]
        units = [unit for name in plugged for unit in (on_supply.get(name, ()) if name in rig.supplies else (name,))]
        if units:
            yield _dark(rig, STRIP, strip, units)


def _dark(rig: Rig, kind: str, key: str, units: Iterable[str]) -> Break:
    """An instrument or amp that loses its mains is gone as a whole."""
    named = tuple(dict.fromkeys(units))
    stops = {each: stops_sound(rig.units[each]) if _board(rig, each) else True for each in named}
    gone = frozenset(("thing", each) for each, silent in stops.items() if silent is not False)
    return Break(kind, key, gone, named, tuple(each for each, silent in stops.items() if silent is None))


def _board(rig: Rig, name: str) -> bool:
    return name in rig.units and rig.units[name].kind == "unit"


COMPUTE = single_breaks
