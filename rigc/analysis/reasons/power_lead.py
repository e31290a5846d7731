"""What a power lead loses: `D2a.mohm`, `.current`, `.shared-drop`, `.drop`, `.drop-percent`, `.warm-drop`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths, Length
from rigc.analysis.computations.lead_drops import LeadDrop, LeadDrops
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, known, ours
from rigc.analysis.reasons.operands import operands
from rigc.analysis.reasons.supplied_input import supplied_input
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain
from rigc.facts.conductors import COPPER_PER_KELVIN, TABLE_CELSIUS, WARM_CELSIUS
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Input, Reason, told

_PRACTICE = "common practice, no source"
_OHM = "physics: Ohm's law"


def power_lead(rig: Rig, drops: LeadDrops, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Six reasons for each lead from an outlet to a unit, one more for a leg of a Y lead."""
    marks = {lead.mark: lead for lead in leads.all}
    for drop in drops.all.values():
        length, current = _length(rig, drop, marks[drop.mark], lengths.lengths.get(drop.mark)), _current(rig, drop)
        ohm = _ohm(rig, drop, marks[drop.mark], length)
        shared = _shared(drop)
        lost = _drop(drop, ohm, current, shared)
        if shared is not None:
            yield shared
        yield from (length, ohm, current, lost, _percent(drop, lost), _warm(drop, lost))


def _length(rig: Rig, drop: LeadDrop, lead: Lead, length: Length | None) -> Reason:
    name, value = f"{drop.mark}.wire-length", told(drop.length_mm)
    rule = "the length of a lead that exists, else the next premade one where it must be bought, else the finished one"
    if drop.length_mm is None:
        return Reason(name, value, "mm", f"for want of the length of {drop.mark}", (), rule, _PRACTICE)
    one = supplied_input(rig, lead, length)
    formula, inputs = f"{value}, {one.name}", (one,)
    return Reason(name, value, "mm", formula, inputs, rule, _PRACTICE)


def _ohm(rig: Rig, drop: LeadDrop, lead: Lead, length: Reason) -> Reason:
    name, ohm = f"{drop.mark}.mohm", drop.loop_mohm
    cable = rig.stock.cables.get(lead.cable or "")
    inputs = (
        derived("length", length.value, "mm", length.name),
        *known("conductor", cable.area_mm2 if cable is not None else None),
    )
    rule = "there and back: 2 × length × resistance of a metre at 20 °C"
    if ohm is None or drop.wire is None:
        return Reason(name, NOT_KNOWN, "mΩ", "for want of the length or the conductor", inputs, rule, _OHM)
    value, metres = decimals(ohm, 1), (drop.length_mm or 0.0) / 1000
    (milliohm,) = operands(lambda each: decimals(2 * metres * each), drop.wire.ohm_per_m * 1000)
    formula = f"2 × {length.value} / 1000 × {milliohm} = {value} mΩ"
    return Reason(name, value, "mΩ", formula, inputs, rule, drop.wire.source)


def _current(rig: Rig, drop: LeadDrop) -> Reason:
    draws = rig.units[drop.unit].draws_ma
    own = NOT_KNOWN if draws is None else plain(draws.value)
    value = told(drop.ma)
    inputs = (derived(f"{drop.unit} draws", own, "mA", f"{drop.unit}.draws"),)
    formula = f"{own} mA of {drop.unit}: {value}" if draws is not None else f"for want of what {drop.unit} draws"
    rule = "the current of its unit; in parallel the outlet's share of it"
    return Reason(f"{drop.mark}.current", value, "mA", formula, inputs, rule, "arithmetic on stated values")


def _shared(drop: LeadDrop) -> Reason | None:
    """What the other legs of a Y lead add; None for any other lead."""
    if drop.shared == ():
        return None
    name, rule = (
        f"{drop.mark}.shared-drop",
        "there and back, through as much as the legs can share, of the thinner wire: what all carry, less what it would lose alone",
    )
    if drop.shared_v is None or drop.wire is None or drop.ma is None or drop.shared is None:
        return Reason(name, NOT_KNOWN, "mV", "for want of a leg's length, conductor or current", (), rule, _OHM)
    value, own = decimals(drop.shared_v * 1000, 1), drop.ma
    lengths, loads = [each.length_mm for each in drop.shared], [each.ma or 0.0 for each in drop.shared]

    def lost(alone: float, *metres: float) -> str:
        parts = (mm * (ohm * ma - alone * own) for mm, ohm, ma in zip(lengths, metres, loads, strict=True))
        return decimals(2 * sum(parts) / 1e6, 1)

    alone, *metres = operands(lost, *(1000 * wire.ohm_per_m for wire in (drop.wire, *(it.wire for it in drop.shared))))
    terms = [
        f"{plain(mm)} × ({ohm} × {plain(ma)} − {alone} × {plain(own)})"
        for mm, ohm, ma in zip(lengths, metres, loads, strict=True)
    ]
    formula = f"2 × ({' + '.join(terms)}) / 1000000 = {value}"
    inputs = tuple(
        Input(f"{plain(each.length_mm)} mm that {', '.join(each.marks)} share", plain(each.ma or 0.0), "mA")
        for each in drop.shared
    )
    return Reason(name, value, "mV", formula, inputs, rule, _OHM)


def _drop(drop: LeadDrop, ohm: Reason, current: Reason, shared: Reason | None) -> Reason:
    more = () if shared is None else (derived("shared with other legs", shared.value, "mV", shared.name),)
    inputs = (
        derived("there and back", ohm.value, "mΩ", ohm.name),
        derived("current", current.value, "mA", current.name),
        *more,
    )
    value = told(None if drop.drop_v is None else drop.drop_v * 1000)
    formula = "for want of resistance or current"
    if drop.drop_v is not None and drop.loop_mohm is not None and drop.ma is not None:
        parts = (drop.loop_mohm, drop.ma, 1000 * (drop.shared_v or 0.0))
        mohm, milliamps, more_mv = operands(lambda o, i, more: decimals(o * i / 1000 + more, 1), *parts, least=1)
        formula = f"{mohm} × {milliamps} / 1000{'' if shared is None else f' + {more_mv}'} = {value}"
    return Reason(f"{drop.mark}.drop", value, "mV", formula, inputs, "drop = current × resistance", _OHM)


def _percent(drop: LeadDrop, lost: Reason) -> Reason:
    value, fed = told(drop.percent, 2), plain(drop.volts)
    inputs = (
        derived("drop", lost.value, "mV", lost.name),
        derived(f"{drop.outlet} gives", fed, "V", f"{drop.outlet}.volts"),
    )
    formula = "for want of the drop"
    if drop.percent is not None and drop.drop_v is not None:
        (exact,) = operands(lambda lost: decimals(lost / 1000 / drop.volts * 100, 2), drop.drop_v * 1000, least=1)
        formula = f"{exact} / 1000 / {fed} × 100 = {value}"
    return Reason(f"{drop.mark}.drop-percent", value, "%", formula, inputs, "drop / voltage that feeds it × 100", _OHM)


def _warm(drop: LeadDrop, lost: Reason) -> Reason:
    value = told(None if drop.warm_drop_v is None else drop.warm_drop_v * 1000)
    inputs = (
        derived("drop", lost.value, "mV", lost.name),
        ours(COPPER_PER_KELVIN),
        ours(TABLE_CELSIUS),
        ours(WARM_CELSIUS),
    )
    warmer, per_kelvin = WARM_CELSIUS.value - TABLE_CELSIUS.value, COPPER_PER_KELVIN.value
    formula = "for want of the drop"
    if drop.drop_v is not None:
        (cold,) = operands(lambda cold: decimals(cold * (1 + per_kelvin * warmer)), drop.drop_v * 1000, least=1)
        formula = f"{cold} × (1 + {plain(per_kelvin)} × {plain(warmer)}) = {value}"
    return Reason(
        f"{drop.mark}.warm-drop",
        value,
        "mV",
        formula,
        inputs,
        "copper resists more when it is warm",
        COPPER_PER_KELVIN.source,
    )


REASONS = power_lead
