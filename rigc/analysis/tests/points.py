"""Rig -> where each of the usual tests is made on it; a test that has nothing to be made on has no point."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.leads.conductors_of_lead import lead_conductors
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.signal.levels.standing_pads import standing_loss_db
from rigc.model.jacks import Jack
from rigc.model.rig import Rig
from rigc.model.things import ENDS, Instrument, Unit
from rigc.model.ways.inner_ways import handed_on, main_outputs
from rigc.record import Record

PLUG_TOP = "plug-top: its body is its plug"
EARTHLESS = frozenset(("C2", "C8", "C18", PLUG_TOP))
"""Appliance inlets without an earth pin (IEC 60320)."""


class Point(Record):
    """A test at a point; `beside` says what is there; `place` is heel or toe where one point is read twice."""

    test: int
    point: str
    beside: str = ""
    place: str = ""


def points(rig: Rig, power: PowerAssignment, leads: Leads, outputs: tuple[str, ...]) -> tuple[Point, ...]:
    """In the order of the tests, each in the order of the source."""
    found = (
        *_mains(rig, power),
        *_audio_leads(leads),
        *_control_leads(rig, leads),
        *_power(power, leads),
        *_sound(rig, leads, outputs),
    )
    return tuple(sorted((*found, *_control(rig), *_whole(rig, power)), key=lambda each: each.test))


def board_outputs(leads: Leads, rig: Rig) -> tuple[str, ...]:
    """The jacks from which sound goes to an amp or a desk; an instrument or a microphone that is plugged straight into one plays past
    the board."""
    ends = (
        lead
        for lead in leads.all
        if lead.signal == "audio"
        and rig.things[lead.end.thing].kind in ENDS
        and not isinstance(rig.things[lead.start.thing], Instrument)
    )
    return tuple(dict.fromkeys(str(lead.start) for lead in ends))


def _mains(rig: Rig, power: PowerAssignment) -> Iterator[Point]:
    for name, jack in _inlets(rig, power):
        supply = rig.supplies.get(name)
        top = supply is not None and supply.plug_top is not None and not supply.minus_earthed
        kind = PLUG_TOP if top else "inlet not stated" if jack is None else str(jack.connector)
        point = name if jack is None else f"{name}.{jack.name}"
        insulated = name in rig.units and rig.units[name].earth == "double-insulated"
        if kind not in EARTHLESS and not insulated:
            yield Point(1, point, kind)
        yield Point(2, point, kind)
    for strip in rig.mains_strips:
        yield from (Point(1, strip, "mains strip: the earth of each socket"), Point(2, strip, "mains strip"))


def _inlets(rig: Rig, power: PowerAssignment) -> Iterator[tuple[str, Jack | None]]:
    for panel in rig.panels.values():
        yield from ((panel.name, jack) for jack in panel.jacks if jack.role == "inlet")
    for supply in used_supplies(rig, power):
        inlet = next((jack for jack in supply.jacks if jack.role == "inlet"), None)
        if supply.mains or (supply.takes_mains and inlet is not None):
            yield supply.name, inlet
    yield from ((unit.name, unit.inlet) for unit in used_units(rig) if unit.own_mains and not unit.on_battery)


def _audio_leads(leads: Leads) -> Iterator[Point]:
    for test in (3, 4):
        for lead in leads.all:
            if lead.signal == "audio":
                yield Point(test, lead.mark, f"{lead.start} to {lead.end}")


def _control_leads(rig: Rig, leads: Leads) -> Iterator[Point]:
    for lead in leads.all:
        if lead.signal in ("control", "midi"):
            wired = lead_conductors(rig, lead) or "wiring not known"
            yield Point(20, lead.mark, f"{lead.start} to {lead.end}, {wired}")


def _power(power: PowerAssignment, leads: Leads) -> Iterator[Point]:
    used = {port: load for port, load in power.loads.items() if load.units}
    for port, load in used.items():
        plugs = [_at_plug(lead) for lead in leads.at(port) if lead.make.current]
        beside = "; ".join(plugs) or f"lead to {', '.join(load.units)}, {_volts(load.volts, load.setting.current)}"
        yield Point(5, str(port), beside)
        if load.setting.current == "dc":
            yield Point(7, str(port), beside)
        if len(used) > 1:
            yield Point(8, str(port), ", ".join(load.units))
    for feed in power.feeds:
        fed = [lead for lead in leads.to(feed.unit) if lead.make.current]
        marks = ", ".join(f"{lead.mark} ({lead.make.kind})" if lead.make.special else lead.mark for lead in fed)
        yield Point(6, feed.unit, f"{marks or 'lead'}, {_volts(feed.volts, feed.current)}")


def _at_plug(lead: Lead) -> str:
    """What stands at the far plug of a power lead, and how it comes to that."""
    volts = _volts(lead.make.volts or 0.0, lead.make.current)
    pole = "no polarity" if lead.make.current == "ac" else f"{lead.make.polarity or 'polarity not stated'}"
    return ", ".join(filter(None, (f"{lead.mark} to {lead.end.thing}", lead.make.kind, volts, pole)))


def _volts(volts: float, current: str) -> str:
    return f"{volts:g} V" + (" AC" if current == "ac" else "")


def _sound(rig: Rig, leads: Leads, outputs: tuple[str, ...]) -> Iterator[Point]:
    for port in outputs:
        ends = ", ".join(f"{lead.mark} to {lead.end.thing}" for lead in leads.all if str(lead.start) == port)
        yield from (Point(test, port, ends) for test in (9, 10, 12, 13))
    for unit in used_units(rig):
        if not _passes_sound(unit):
            continue
        if unit.bypass is not None and unit.bypass.value != "always-on":
            yield Point(9, unit.name, "bypassed")
        elif standing_loss_db(unit):
            yield Point(9, unit.name, _in_the_way(unit))
        if "passive" not in unit.flags:
            yield Point(11, unit.name, _turns(unit))
        if any(path.how.startswith("transformer") for path in unit.paths):
            yield Point(
                13,
                unit.name,
                "its lift to and fro"
                if any(jack.lift for jack in unit.jacks)
                else "its lift, if it has one, to and fro",
            )
    for intent in rig.intents:
        if intent.kind == "mute":
            yield Point(14, intent.unit, "muted")


def _in_the_way(unit: Unit) -> str:
    taken = [port.jack for port in main_outputs(unit) if not handed_on(unit, port.jack)]
    every = len(taken) == len(main_outputs(unit))
    return "always in the way" + ("" if every else f" of {', '.join(taken)}")


def _turns(unit: Unit) -> str:
    told = {"inverts": "inverts, by its facts", "non-inverting": "does not invert, by its facts"}
    return next((words for flag, words in told.items() if flag in unit.flags), "")


def _passes_sound(unit: Unit) -> bool:
    roles = {jack.role for jack in unit.jacks}
    return unit.kind == "unit" and {"input", "output"} <= roles


def _control(rig: Rig) -> Iterator[Point]:
    reached = [link.end.thing for link in rig.connections if link.signal == "midi"]
    listening = [channel.unit for channel in rig.channels] or reached
    for name in dict.fromkeys(name for name in listening if name in reached):
        yield Point(15, name, "every preset")
    for link in rig.connections:
        jack = rig.jack(link.start)
        if link.signal == "control" and jack is not None and jack.role == "expression out":
            yield from (Point(16, link.start.thing, f"{place}, {link.end}", place) for place in ("heel", "toe"))


def _whole(rig: Rig, power: PowerAssignment) -> Iterator[Point]:
    yield Point(18, rig.head.name, "the board")
    supplies = used_supplies(rig, power)
    plugged = [supply.name for supply in supplies if supply.takes_mains]
    if plugged:
        yield Point(17, rig.head.name, ", ".join(plugged))
    yield from (Point(19, supply.name, "its case") for supply in supplies)
    yield Point(19, rig.head.name, "the warmest unit")
