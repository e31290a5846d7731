"""A DC lead loses more than 3 % of the voltage that feeds it.

Why it matters: the unit gets less than its outlet is set to, and less still when it is busy; its hum and its clipping change.
What to do: make the lead thicker or shorter, or move the supply nearer.
Source: physics: ΔV = 2 ρ' L I at 20 °C; conductors by IEC 60228, ISO 6722-1 and ASTM B258 (partly from memory); the 3 % are
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.load_limits import exceeds
from rigc.analysis.computations.power_network import InletVolts, PowerNetwork
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.wording import listed
from rigc.facts.conductors import DROP_SHARE
from rigc.model.rig import Rig

KIND = Kind(
    "lossy-lead",
    Level.WARNING,
    __doc__,
    "2 × resistance per length × length × current ≤ 3 % of the outlet's voltage, the trunk of a Y counted",
    "physics: Ohm's law; the 3 % are common practice, no source",
)


def lossy_lead(rig: Rig, leads: Leads, drops: LeadDrops, network: PowerNetwork) -> Iterator[Diagnostic]:
    """One finding for each lead; can't-check once for each cable, and each captive lead, of unknown conductor."""
    bare: dict[str, list[str]] = {}
    for lead in leads.all:
        drop = drops.all.get(lead.mark)
        if drop is None:
            continue
        if drop.drop_v is not None and exceeds(drop.drop_v, DROP_SHARE.value, drop.volts):
            yield _told(lead, drop)
        elif lead.leg_of is not None and (inlet := network.of(drop.unit)) is not None and _trunk(inlet):
            yield _leg(lead, drop, inlet)
        elif drop.wire is None and lead.captive is not None:
            yield _captive(rig, lead, lead.captive.thing)
        elif drop.wire is None and drop.length_mm is not None and lead.cable is not None:
            bare.setdefault(lead.cable, []).append(lead.mark)
    for cable, marks in bare.items():
        yield KIND.cant_check(
            rig.stock.cables[cable].declared,
            f"'{cable}' states no conductor; the drop of {listed(marks)}, made of it, can't be checked",
            subject=(cable,),
            help=f"write its conductor in '{cable}', for example conductor 0.5 mm2",
        )


def _trunk(inlet: InletVolts) -> bool:
    """Whether a Y loses too much, its trunk counted with the current of all its units."""
    return inlet.known and exceeds(inlet.most_v - inlet.least_v, DROP_SHARE.value, inlet.most_v)


def _leg(lead: Lead, drop: LeadDrop, inlet: InletVolts) -> Diagnostic:
    lost, percent = inlet.most_v - inlet.least_v, (inlet.most_v - inlet.least_v) / inlet.most_v * 100
    return KIND.at(
        lead.span,
        f"{lead.mark} to '{drop.unit}' loses up to {lost:.2f} of {inlet.most_v:g} V ({percent:.1f} %, more than "
        f"{DROP_SHARE.value:g} %), the trunk of the Y {lead.leg_of} counted, which carries the current of all its units",
        subject=(lead.mark, drop.unit),
        label="this leg",
        numbers=(Number("drop", lost, "V"), Number("share", percent, "%"), Number("limit", DROP_SHARE.value, "%")),
        help="part the legs near the outlet, use a thicker conductor, or give each unit an outlet of its own",
    )


def _captive(rig: Rig, lead: Lead, unit: str) -> Diagnostic:
    return KIND.cant_check(
        rig.things[unit].declared,
        f"the conductor of the captive lead {lead.mark} of '{unit}' is not stated; what it loses can't be checked",
        subject=(lead.mark, unit),
        help=f"state the lead with a cable like it: {lead.mark} {lead.start} -> {lead.end} of a cable with a `conductor`",
    )


def _told(lead: Lead, drop: LeadDrop) -> Diagnostic:
    volts, percent, length = drop.drop_v or 0.0, drop.percent or 0.0, drop.length_mm or 0.0
    wire = drop.wire.typed if drop.wire is not None else "?"
    fits = length * DROP_SHARE.value / percent
    return KIND.at(
        lead.span,
        f"{lead.mark} to '{drop.unit}' loses {volts:.2f} of {drop.volts:g} V ({percent:.1f} %, more than "
        f"{DROP_SHARE.value:g} %): {drop.ma:g} mA through {length:g} mm of {wire}{_beside(drop)}",
        subject=(lead.mark, drop.unit),
        label="this lead",
        numbers=(Number("drop", volts, "V"), Number("share", percent, "%"), Number("limit", DROP_SHARE.value, "%")),
        help=f"use a thicker conductor, or one no longer than {int(fits)} mm"
        + (", or give each unit an outlet of its own" if drop.beside else ""),
    )


def _beside(drop: LeadDrop) -> str:
    """What the other legs of a Y lead add, at most: where the legs part is not stated."""
    parts = [f"{ma:g} mA through up to {mm:g} mm" for ma, mm in drop.beside if ma is not None and mm is not None]
    return f", and {' and '.join(parts)} of it for the other legs" if parts else ""


CHECK = lossy_lead
