"""LeadMass: leads, their lengths and plugs -> what the leads of each signal weigh: `audio.mass`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.stores.ready_lead import ready_mass
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import stated, unstated
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.term import Traced
from rigc.traced.units import KILOGRAMS

_RULE = (
    "cable by its length × its mass per metre, and the plugs; a ready lead as its stock says; the legs of a Y lead share the plug "
    "at the outlet"
)
_Made = tuple[Lead, tuple[tuple[Port, str | None], ...]]


class LeadMass(Record):
    """What all leads of a signal that stay on the board weigh, by signal. A captive lead weighs with its unit or brick."""

    masses: dict[str, AnyFigure]


def lead_mass(rig: Rig, leads: Leads, lengths: CableLengths) -> LeadMass:
    """Cable by the length as supplied, and plugs; a ready lead as its stock says."""
    return masses_of(rig, leads, lengths)


def masses_of(rig: Rig, leads: Leads, lengths: CableLengths, within: str = "") -> LeadMass:
    """The same of a part of the rig, by whose name its figures are then called."""
    signals = dict.fromkeys(lead.signal for lead, _ in leads.plug_ends)
    return LeadMass({signal: _mass(rig, signal, leads, lengths, within) for signal in signals})


def _mass(rig: Rig, signal: str, leads: Leads, lengths: CableLengths, within: str) -> AnyFigure:
    ready: list[Traced] = []
    made: list[_Made] = []
    for lead, plugs in leads.plug_ends:
        if lead.signal == signal and lead.captive is None:
            mass = ready_mass(rig, lead, lengths.supplied_mm(lead.mark))
            if mass is None:
                made.append((lead, plugs))
            else:
                ready.append(stated(f"{lead.mark}, ready", mass))
    parts = (*ready, *_cables(rig, made, lengths), *_plugs(rig, made))
    label = f"{signal} leads"
    return figure(f"{within}{signal}.mass", total(parts), KILOGRAMS, rule=_RULE, source=ARITHMETIC, label=label)


def _cables(rig: Rig, made: list[_Made], lengths: CableLengths) -> Iterator[Traced]:
    """The cables of leads in kg, kind by kind."""
    kinds: dict[str | None, list[Lead]] = {}
    for lead, _ in made:
        kinds.setdefault(lead.cable, []).append(lead)
    for kind, own in kinds.items():
        cable = rig.stock.cables.get(kind or "")
        supplied = [(lead, lengths.supplied_mm(lead.mark)) for lead in own]
        metres = (
            total(unstated(f"the length of {lead.mark}") if each is None else each for lead, each in supplied) / 1000
        )
        if cable is None or cable.mass_g_per_m is None:
            yield metres * unstated(f"the mass of the cable of {own[0].mark}")
        else:
            yield metres * stated(f"{kind} weighs", cable.mass_g_per_m) / 1000


def _plugs(rig: Rig, made: list[_Made]) -> Iterator[Traced]:
    """The plugs on leads in kg, kind by kind; a soldered end needs to weigh nothing."""
    for lead, plugs in made:
        for port, name in plugs:
            if name not in rig.stock.plugs:
                yield unstated(f"the plug kind of {lead.mark} at '{port}'")
    counts = Counter(name for _, plugs in made for _, name in plugs if name in rig.stock.plugs)
    for name, count in counts.items():
        plug = rig.stock.plugs[name or ""]
        if plug.mass_kg is not None:
            yield count * stated(f"plug {name} weighs", plug.mass_kg)
        elif not plug.soldered:
            yield unstated(f"the mass of the plug '{name}'")


COMPUTE = lead_mass
