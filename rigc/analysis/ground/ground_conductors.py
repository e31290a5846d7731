"""Rig, leads, feeds and a scenario -> every conductor that joins two grounds in it, shields through insulated panel jacks included."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.deck_metal import deck_metal
from rigc.analysis.ground.landing import landing
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Instrument, Panel, Unit
from rigc.model.ways.ground_link import EARTH, GROUND, METAL, GroundLink, Pole
from rigc.model.wishes import When
from rigc.record import Record

PANEL_JACK = "jack "
"""How the part of a pole begins that is no ground but the sleeve of an insulated panel jack."""


def through_panels(
    shields: list[GroundLink], plugged: dict[Port, int]
) -> tuple[list[GroundLink], list[tuple[Port, Pole]]]:
    """Joins the two shields that meet at an insulated panel jack into one run; a shield that ends there joins nothing.

    `plugged` counts the leads at each panel jack: one with a single lead is open, and is told with the ground it shows.
    """
    links, open_ends = list(shields), []
    for port, leads in plugged.items():
        sleeve = (port.thing, f"{PANEL_JACK}{port.jack}")
        here = [link for link in links if sleeve in link.ends]
        links = [link for link in links if sleeve not in link.ends]
        if len(here) == 2:
            links.append(_run(here[0], here[1], sleeve))
        elif len(here) == 1 and leads == 1:
            open_ends.append((port, here[0].other(sleeve)))
    return links, open_ends


def _run(one: GroundLink, two: GroundLink, sleeve: Pole) -> GroundLink:
    first, second = (one, two) if one.ends[1] == sleeve or two.ends[0] == sleeve else (two, one)
    return GroundLink(
        (first.other(sleeve), second.other(sleeve)),
        "audio",
        (*(first.marks if first.ends[1] == sleeve else first.marks[::-1]),
         *(second.marks if second.ends[0] == sleeve else second.marks[::-1])),
        (*first.lifts, *second.lifts),
        (*first.isolators, *second.isolators),
        first.unsure or second.unsure,
        first.span,
    )  # fmt: skip


CONTACTS = ("relay", "opto")


class Joins(Record):
    """The grounds of a scenario, what joins them, and the panel jacks that nothing is plugged into, with their ground."""

    poles: tuple[Pole, ...]
    links: tuple[GroundLink, ...]
    open_ends: tuple[tuple[Port, Pole], ...]


def joins(rig: Rig, leads: Leads, power: PowerAssignment, scenario: Scenario | None) -> Joins:
    """Shields of audio leads, control leads without relay or opto-coupler, commons that feed several units, the bare metal of a
    deck, mains earths.

    A MIDI lead joins nothing, unless its shield is stated to be joined at both ends: as made, it is joined at the sending end
    only, and the input is opto-isolated (MIDI 1.0). A USB lead always joins.
    """
    used = leads_in_use(rig, leads, scenario)
    shields = [link for lead in used if lead.signal == "audio" for link in _shield(rig, lead, scenario)]
    runs, open_ends = through_panels(shields, _plugged(rig, used))
    links = [*runs, *(link for lead in used if lead.signal == "control" for link in _control(rig, lead))]
    links += _midi(rig, used)
    links += [_usb(lead) for lead in used if lead.signal == "usb"]
    links += _commons(rig, leads, power)
    links += deck_metal(rig, links)
    here = amps_in_use(rig, used)
    sources = sources_in_use(rig, used)
    sounding = {port.thing for lead in used if lead.signal == "audio" for port in (lead.start, lead.end)}
    joined = sounding | {thing for link in links for thing, part in link.ends if part == GROUND}
    on_mains = (unit.name for unit in rig.units.values() if unit.own_mains and unit.name in joined)
    links += _earths(rig, (*here, *on_mains, *sources), links)
    poles: dict[Pole, None] = dict.fromkeys(
        (unit.name, GROUND)
        for unit in rig.units.values()
        if unit.name in here or (unit.kind == "unit" and unit.name in sounding)
    )
    poles.update(dict.fromkeys((name, GROUND) for name in sources))
    poles.update(dict.fromkeys(pole for link in links for pole in link.ends))
    poles.update(dict.fromkeys(pole for _, pole in open_ends))
    return Joins(tuple(poles), tuple(links), tuple(open_ends))


def leads_in_use(rig: Rig, leads: Leads, scenario: Scenario | None) -> tuple[Lead, ...]:
    """The leads that a scenario plugs in: those of chains for it, without those to amps that it leaves out."""
    out = set()
    if scenario is not None and scenario.amps is not None:
        out = {unit.name for unit in rig.units.values() if unit.ends} - set(scenario.amps)
    when = When((scenario.name,)) if scenario is not None else When()
    held: dict[frozenset[Port], bool] = {}
    for each in rig.connections:
        ends = frozenset((each.start, each.end))
        held[ends] = held.get(ends, False) or each.when.meets(when)
    return tuple(
        lead
        for lead in leads.all
        if held.get(frozenset((lead.start, lead.end)), True) and not {lead.start.thing, lead.end.thing} & out
    )


def amps_in_use(rig: Rig, used: tuple[Lead, ...]) -> tuple[str, ...]:
    """The amps, desks and listeners that these leads reach, in order of declaration."""
    reached = {port.thing for lead in used for port in (lead.start, lead.end)}
    return tuple(unit.name for unit in rig.units.values() if unit.ends and unit.name in reached)


def sources_in_use(rig: Rig, used: tuple[Lead, ...]) -> tuple[str, ...]:
    """The sources whose ground counts by itself and from which these leads go, in order of declaration."""
    reached = {port.thing for lead in used for port in (lead.start, lead.end)}
    return tuple(each.name for each in rig.instruments.values() if each.has_ground and each.name in reached)


def _plugged(rig: Rig, used: tuple[Lead, ...]) -> dict[Port, int]:
    """How many audio leads end at each panel jack, soldered ones counted."""
    plugged: dict[Port, int] = {}
    for lead in used:
        for port in (lead.start, lead.end):
            if port.thing in rig.panels and lead.signal == "audio":
                plugged[port] = plugged.get(port, 0) + 1
    return plugged


def _shield(rig: Rig, lead: Lead, scenario: Scenario | None) -> list[GroundLink]:
    poles, lifts, isolators = [], [], []
    unsure = None
    for port in (lead.start, lead.end):
        thing = rig.things[port.thing]
        if isinstance(thing, Panel):
            jack = thing.jack(port.jack)
            bonded = jack is not None and jack.bushing == "bonded"
            poles.append((port.thing, METAL if bonded else f"{PANEL_JACK}{port.jack}"))
        elif isinstance(thing, Unit) or (isinstance(thing, Instrument) and thing.has_ground):
            at = landing(rig, port, scenario)
            if at.pole is None:
                return []
            poles.append(at.pole)
            lifts += [port] if at.lift == "closed" else []
            isolators += [port] if at.lift == "closed" and at.transformer else []
            unsure = _unknown_lift(port) if at.unsure else unsure
        else:
            return []
    made = GroundLink((poles[0], poles[1]), "audio", (lead.mark,), tuple(lifts), tuple(isolators), unsure, lead.span)
    return [made]


def _unknown_lift(port: Port) -> tuple[str, str]:
    said = f"how the ground lift at '{port}' stands is not said"
    return said, f"look, and write `lift {port} open` or `lift {port} closed` in the scenario"


def _control(rig: Rig, lead: Lead) -> list[GroundLink]:
    """An expression lead always joins; a switching lead does unless one of its jacks has a relay or an opto-coupler."""
    ports = [port for port in (lead.start, lead.end) if (jack := rig.jack(port)) and jack.role.startswith("control")]
    contacts = [jack.contact for port in ports if (jack := rig.jack(port))]
    if any(contact in CONTACTS for contact in contacts):
        return []
    ends = ((lead.start.thing, GROUND), (lead.end.thing, GROUND))
    unsure = None
    if ports and not any(contacts):
        unsure = (f"'{ports[0]}' does not say how it switches", f"write `relay`, `opto` or `contact` at '{ports[0]}'")
    return [GroundLink(ends, "control" if ports else "expression", (lead.mark,), unsure=unsure, span=lead.span)]


def _midi(rig: Rig, used: tuple[Lead, ...]) -> list[GroundLink]:
    both = {frozenset((each.start, each.end)) for each in rig.connections if each.shield_at_both}
    return [
        GroundLink(((lead.start.thing, GROUND), (lead.end.thing, GROUND)), "midi", (lead.mark,), span=lead.span)
        for lead in used
        if lead.signal == "midi" and frozenset((lead.start, lead.end)) in both
    ]


def _usb(lead: Lead) -> GroundLink:
    """Its shield and its return join both grounds."""
    return GroundLink(((lead.start.thing, GROUND), (lead.end.thing, GROUND)), "usb", (lead.mark,), span=lead.span)


def _commons(rig: Rig, leads: Leads, power: PowerAssignment) -> list[GroundLink]:
    """The d.c. leads from a common that feeds several units, and from a supply whose minus is earthed: to the pole that each
    unit's ground is."""
    commons: dict[str, list[Lead]] = {}
    for lead in leads.all:
        if lead.signal in ("dc", "ac") and lead.start.thing in rig.supplies and power.of(lead.end.thing) is not None:
            outlet = rig.supplies[lead.start.thing].outlet(lead.start.jack)
            shared = outlet.common if outlet is not None else None
            name = f"{lead.start.thing} common {shared}" if shared is not None else str(lead.start)
            if rig.supplies[lead.start.thing].minus_earthed:
                name = _minus(lead.start.thing)[0]
            commons.setdefault(name, []).append(lead)
    earthed = {_minus(supply.name)[0] for supply in rig.supplies.values() if supply.minus_earthed}
    links = []
    for name, fed in commons.items():
        for lead in fed if name in earthed or len({each.end.thing for each in fed}) > 1 else ():
            ground = rig.units[lead.end.thing].ground
            if ground is None or ground.value != "isolated":
                links.append(_common(name, lead, None if ground is None else ground.value))
    return links


def _minus(supply: str) -> Pole:
    """The pole at which all outlets of a supply with an earthed minus are joined."""
    return f"{supply} minus", "negative"


def _common(name: str, lead: Lead, ground: str | None) -> GroundLink:
    unit = lead.end.thing
    unsure = None
    if ground is None:
        words = "`ground negative`, `ground positive` or `ground isolated`"
        unsure = (f"'{unit}' does not say which pole is its ground", f"measure it and write {words} in '{unit}'")
    pole = (name, "positive" if ground == "positive" else "negative")
    return GroundLink((pole, (unit, GROUND)), "common", (lead.mark,), unsure=unsure, span=lead.span)


def _earths(rig: Rig, here: tuple[str, ...], links: list[GroundLink]) -> list[GroundLink]:
    """Earthed amps, desks, sources and units with a mains lead of their own, supplies with an earthed minus, and the bare metal of a panel whose mains inlet brings an earth along."""
    owners: dict[str, Unit | Instrument] = {**rig.units, **rig.instruments}
    earthed = [((name, GROUND), owners[name].declared) for name in here if owners[name].earth == "earthed"]
    metal = (pole for link in links for pole in link.ends if pole[1] == METAL)
    bare = dict.fromkeys(pole for pole in metal if pole[0] in rig.panels)
    earthed += [(pole, rig.panels[pole[0]].declared) for pole in bare if _earthed_inlet(rig.panels[pole[0]])]
    used = {pole for link in links for pole in link.ends}
    earthed += [
        (_minus(supply.name), supply.declared)
        for supply in rig.supplies.values()
        if supply.minus_earthed and _minus(supply.name) in used
    ]
    return [GroundLink((EARTH, pole), "earth", span=span) for pole, span in earthed]


def _earthed_inlet(panel: Panel) -> bool:
    """Whether it has an appliance inlet with an earth contact (IEC 60320: C6, C14, C16, C20)."""
    return any(jack.role == "inlet" and jack.connector.kind in ("C6", "C14", "C16", "C20") for jack in panel.jacks)
