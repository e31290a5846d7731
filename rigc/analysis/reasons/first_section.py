"""What hangs on an instrument before the first buffer, all units off: `guitar.section.cable`, `.resonance` and others."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.first_section import FirstSection, Section
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, follows, known, limit, stated
from rigc.analysis.reasons.reason import ARITHMETIC, NOT_KNOWN, Input, Reason
from rigc.analysis.signal.section_leads import OWN_LEAD, SectionLead
from rigc.diagnostics.decimals import decimals
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.rig import Rig
from rigc.model.things import Instrument

_RESONANCE = "unloaded resonance = 1 / (2π √(L C)); volume and tone controls and the input pull it lower"
_PHYSICS = "physics: resonance of an inductance with a capacitance"


def first_section(rig: Rig, first: FirstSection, leads: Leads) -> Iterator[Reason]:
    """The figures of each passive instrument's section, and of each lead in it."""
    marks = {lead.mark: lead for lead in leads.all}
    numbers: dict[str, int] = {}
    for section in first.sections:
        number = numbers[section.instrument] = numbers.get(section.instrument, 0) + 1
        base = f"{section.instrument}.section{'' if number == 1 else f'-{number}'}"
        if not section.active:
            for lead in section.leads:
                yield from _lead(rig, base, rig.instruments[section.instrument], lead, marks.get(lead.mark))
            yield from _sums(rig, base, section)


def _field(lead: SectionLead) -> str:
    return "own-lead" if lead.mark == OWN_LEAD else lead.mark


def _lead(rig: Rig, base: str, instrument: Instrument, lead: SectionLead, made: Lead | None) -> Iterator[Reason]:
    name = f"{base}.{_field(lead)}"
    length = NOT_KNOWN if lead.length_mm is None else decimals(lead.length_mm / 1000, 3)
    cable = rig.stock.cables.get((made.cable if made is not None else instrument.lead_cable) or "")
    per_m = NOT_KNOWN if lead.pf_per_m is None else decimals(lead.pf_per_m)
    metres = Reason(
        f"{name}.length",
        length,
        "m",
        f"{_mm(lead)} / 1000 = {length}",
        (_length(instrument, lead, made),),
        "as long as it is, or is made",
        ARITHMETIC,
    )
    per_metre = (
        stated(f"capacitance of {cable.name}", cable.capacitance_pf_per_m)
        if cable is not None
        else Input("cable", "not stated")
    )
    yield metres
    yield Reason(
        f"{name}.per-metre",
        per_m,
        "pF/m",
        per_metre.value,
        (per_metre,),
        "a stated figure stands",
        "the source states it",
    )
    value = NOT_KNOWN if lead.pf is None else decimals(lead.pf, 2)
    formula = lead.missing or f"{length} × {per_m} = {value}"
    rule = "length × capacitance per metre"
    yield Reason(
        f"{name}.capacitance",
        value,
        "pF",
        formula,
        (follows("length", metres), per_metre),
        rule,
        "physics: a cable's capacitance grows with its length",
    )


def _mm(lead: SectionLead) -> str:
    return "?" if lead.length_mm is None else decimals(lead.length_mm)


def _length(instrument: Instrument, lead: SectionLead, made: Lead | None) -> Input:
    if made is None:
        return stated("lead to the body-pack", instrument.lead_mm)
    if made.existing_mm is not None:
        return stated(f"length of {made.mark}", made.existing_mm)
    if made.stage:
        return stated(f"lead of {instrument.name}", instrument.lead_mm)
    field = "finished"
    return derived(f"{made.mark} {field}", _mm(lead), "mm", f"{made.mark}.{field}")


def _sums(rig: Rig, base: str, section: Section) -> Iterator[Reason]:
    instrument = rig.instruments[section.instrument]
    parts = tuple(
        derived(
            lead.mark,
            NOT_KNOWN if lead.pf is None else decimals(lead.pf, 2),
            "pF",
            f"{base}.{_field(lead)}.capacitance",
        )
        for lead in section.leads
    )
    want = f"for want of: {', '.join(section.missing)}"
    cable = _sum(
        f"{base}.cable",
        section.cable_pf,
        parts,
        want,
        "all leads up to the first buffer, units that are off being only cable",
    )
    yield cable
    limited = limit(rig, "capacitance", CABLE_LIMIT)
    top = Reason(
        f"{base}.limit",
        decimals(section.limit_pf, 0),
        "pF",
        f"{decimals(section.limit_pf, 0)}, {'our own' if limited.source else 'as stated'}",
        (limited,),
        "the rig's own limit, else that of practice",
        limited.source or "the source states it",
    )
    yield top
    percent = NOT_KNOWN if section.percent is None else decimals(section.percent)
    formula = want if section.percent is None else f"{cable.value} / {top.value} × 100 = {percent}"
    yield Reason(
        f"{base}.percent",
        percent,
        "%",
        formula,
        (follows("cable", cable), follows("limit", top)),
        "cable / limit × 100",
        ARITHMETIC,
    )
    own = stated(f"capacitance of {instrument.name}", instrument.capacitance_pf)
    pickup = Reason(
        f"{base}.pickup",
        _figure(section.pickup_pf, 1),
        "pF",
        own.value,
        (own,),
        "a stated figure stands",
        "the source states it",
    )
    yield pickup
    together = _sum(
        f"{base}.together",
        section.total_pf,
        (follows("cable", cable), follows("pickup", pickup)),
        want,
        "cable and pickup in parallel",
    )
    yield together
    yield _resonance(
        f"{base}.resonance", instrument, section.unloaded_hz, section.total_pf, (follows("together", together),), want
    )
    if section.plain_hz is not None:
        yield _plain(rig, base, instrument, section, pickup)


def _sum(name: str, value: float | None, parts: tuple[Input, ...], want: str, rule: str) -> Reason:
    shown = _figure(value, 1)
    formula = want if value is None else f"{' + '.join(part.value for part in parts)} = {shown}"
    return Reason(name, shown, "pF", formula, parts, rule, "physics: capacitances in parallel add")


def _figure(value: float | None, places: int) -> str:
    return NOT_KNOWN if value is None else decimals(value, places)


def _resonance(
    name: str, instrument: Instrument, hertz: float | None, pf: float | None, parts: tuple[Input, ...], want: str
) -> Reason:
    inputs = (*known(f"inductance of {instrument.name}", instrument.inductance_h), *parts)
    if hertz is None or pf is None or instrument.inductance_h is None:
        return Reason(name, NOT_KNOWN, "Hz", want, inputs, _RESONANCE, _PHYSICS)
    value = decimals(hertz, 0)
    formula = f"1 / (2π √({decimals(instrument.inductance_h.value, 3)} H × {decimals(pf, 1)} pF)) = {value} Hz"
    return Reason(name, value, "Hz", formula, inputs, _RESONANCE, _PHYSICS)


def _plain(rig: Rig, base: str, instrument: Instrument, section: Section, pickup: Reason) -> Reason:
    """On the plain stage lead alone: the one stated, else the instrument's own."""
    mm, named = instrument.plain_mm or instrument.lead_mm, instrument.plain_cable or instrument.lead_cable
    cable = rig.stock.cables.get(named or "")
    per_m = None if cable is None else cable.capacitance_pf_per_m
    pf = None if mm is None or per_m is None else mm.value / 1000 * per_m.value + (section.pickup_pf or 0)
    parts = (*known("plain lead", mm), *known(f"capacitance of {named}", per_m), follows("pickup", pickup))
    return _resonance(f"{base}.plain", instrument, section.plain_hz, pf, parts, "")


REASONS = first_section
