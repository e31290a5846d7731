"""A DC lead loses more than {conductors.DROP_SHARE} of the voltage that feeds it.

Why it matters: the unit gets less than its outlet is set to, and less still when it is busy; its hum and its clipping change.
What to do: make the lead thicker or shorter, or move the supply nearer.
Source: physics: ΔV = 2 ρ' L I at {conductors.TABLE_CELSIUS}; conductors by IEC 60228, ISO 6722-1 and ASTM B258 (partly from memory); the {conductors.DROP_SHARE} are
common practice, no source. Of a lead that grows out of a unit or a brick nobody asks the conductor: its maker counts with it.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_edits import cable_edits
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.power.conductor import conductor
from rigc.analysis.power.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.facts.conductors import DROP_SHARE
from rigc.model.rig import Rig

KIND = Kind(
    "lossy-lead",
    Level.WARNING,
    __doc__,
    f"2 × resistance per length × length × current ≤ {DROP_SHARE} of the outlet's voltage, the trunk of a Y counted",
    f"physics: Ohm's law; the {DROP_SHARE} are common practice, no source",
)


def lossy_lead(
    rig: Rig, power: PowerAssignment, leads: Leads, drops: LeadDrops, limits: LoadLimits
) -> Iterator[Diagnostic]:
    """One finding for each lead; can't-check once for each cable of unknown conductor."""
    bare: dict[str, list[str]] = {}
    for lead in leads.all:
        drop = drops.all.get(lead.mark)
        if drop is None:
            continue
        if drop.drop_v is not None and exceeds(drop.drop_v, DROP_SHARE.value, drop.volts):
            yield _told(rig, power, limits, lead, drop)
        elif drop.wire is None and drop.length_mm is not None and lead.cable is not None:
            bare.setdefault(lead.cable, []).append(lead.mark)
    for cable, marks in bare.items():
        yield KIND.cant_check(
            rig.stock.cables[cable].declared,
            f"'{cable}' states no conductor; the drop of {listed(marks)}, made of it, can't be checked",
            subject=(cable,),
            help=f"write its conductor in '{cable}', for example conductor 0.5 mm2",
        )


def _told(rig: Rig, power: PowerAssignment, limits: LoadLimits, lead: Lead, drop: LeadDrop) -> Diagnostic:
    volts, percent, length = drop.drop_v or 0.0, drop.percent or 0.0, drop.length_mm or 0.0
    wire = drop.wire.typed if drop.wire is not None else "?"
    fits = length * DROP_SHARE.value / percent
    thicker = tuple(_thicker(rig, lead, drop))
    return KIND.at(
        lead.span,
        f"{lead.mark} to '{drop.unit}' loses {volts:.2f} of {drop.volts:g} V ({percent:.1f} %, more than "
        f"{DROP_SHARE.value:g} %): {drop.ma:g} mA through {length:g} mm of {wire}{_shared(drop)}",
        subject=(lead.mark, drop.unit),
        label="this lead",
        numbers=(Number("drop", volts, "V"), Number("share", percent, "%"), Number("limit", DROP_SHARE.value, "%")),
        mends=(*thicker, *_parted(rig, power, limits, drop)),
        help=("" if thicker else "use a thicker conductor than the rig has; or ")
        + f"use a lead no longer than {int(fits)} mm"
        + (", the other legs counted" if drop.shared else ""),
    )


def _thicker(rig: Rig, lead: Lead, drop: LeadDrop) -> Iterator[Mend]:
    """The thinnest cable of stock that loses little enough; not for a lead that grows out of its unit."""
    if lead.captive is not None or drop.wire is None or not drop.drop_v or not drop.wire.ohm_per_m:
        return
    most_ohm = drop.wire.ohm_per_m * DROP_SHARE.value / 100 * drop.volts / drop.drop_v
    old = rig.stock.cables.get(lead.cable or "")
    wires = [
        (wire.ohm_per_m, name)
        for name, cable in rig.stock.cables.items()
        if (old is None or cable.signal == old.signal) and (wire := conductor(cable)) is not None
    ]
    good = [each for each in wires if not exceeds(each[0], 100, most_ohm)]
    if good:
        _, name = max(good)
        again = f"make {lead.mark} anew" if lead.existing_mm is not None else f"make {lead.mark}"
        yield Mend(f"{again} of '{name}'", cable_edits(rig, lead, name))


def _parted(rig: Rig, power: PowerAssignment, limits: LoadLimits, drop: LeadDrop) -> tuple[Mend, ...]:
    """A leg of a Y on an outlet of its own."""
    return moves(rig, power, drop.unit, limits, join=False)[:1] if drop.shared else ()


def _shared(drop: LeadDrop) -> str:
    """What a leg of a Y lead has in common with others, at most: where the legs part is not stated."""
    told = []
    for each in drop.shared or ():
        other = "" if drop.wire is None or each.wire.typed == drop.wire.typed else f" (of {each.wire.typed})"
        told.append(f"up to {each.length_mm:g} mm of it{other} carry {each.ma:g} mA")
    return f", and {' and '.join(told)}, the other legs' too" if told else ""


CHECK = lossy_lead
