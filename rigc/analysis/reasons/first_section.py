"""What hangs on an instrument before the first buffer, all units off: `guitar.section.cable`, `.percent`, `.resonance` and others."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.first_section import FirstSection, InstrumentSection
from rigc.analysis.reasons.inputs import derived, follows, known, limit, stated
from rigc.analysis.reasons.operands import operands
from rigc.analysis.reasons.resonance import resonance_formula
from rigc.analysis.reasons.section_parts import field_of, named_first
from rigc.diagnostics.decimals import decimals
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, STATED, Input, Reason, told

_RESONANCE = "unloaded resonance = 1 / (2π √(L C)); volume and tone controls and the input pull it lower"
_ALL_OFF = "all leads up to the first buffer, units that are off being only cable"
_PHYSICS = "physics: resonance of an inductance with a capacitance"


def first_section(rig: Rig, first: FirstSection) -> Iterator[Reason]:
    """The sums of each passive instrument's section."""
    for base, section in named_first(first):
        instrument = rig.instruments[section.instrument]
        cable, top, pickup = _cable(base, section), _limit(rig, base, section), _pickup(base, instrument, section)
        parts = (follows("cable", cable), follows("pickup", pickup))
        sizes = (section.cable_pf, section.pickup_pf)
        together = _sum(f"{base}.together", section, section.total_pf, sizes, parts, "cable and pickup in parallel")
        yield from (cable, top, _percent(base, section, cable, top), pickup, together)
        yield _resonance(f"{base}.resonance", instrument, section, section.unloaded_hz, section.total_pf, together)
        if section.plain_hz is not None:
            plain = _plain_pf(rig, base, instrument, section, pickup)
            yield plain
            yield _resonance(f"{base}.plain", instrument, section, section.plain_hz, section.plain_pf, plain)


def _want(section: InstrumentSection) -> str:
    return f"for want of: {', '.join(section.missing)}"


def _cable(base: str, section: InstrumentSection) -> Reason:
    parts = tuple(
        derived(lead.mark, told(lead.pf, 2), "pF", f"{base}.{field_of(lead)}.capacitance") for lead in section.leads
    )
    sizes = tuple(lead.pf for lead in section.leads)
    return _sum(f"{base}.cable", section, section.cable_pf, sizes, parts, _ALL_OFF)


def _sum(
    name: str,
    section: InstrumentSection,
    pf: float | None,
    sizes: tuple[float | None, ...],
    parts: tuple[Input, ...],
    rule: str,
) -> Reason:
    value, formula = told(pf), _want(section)
    if pf is not None:
        terms = operands(lambda *terms: decimals(sum(terms)), *(size or 0.0 for size in sizes), least=1)
        formula = f"{' + '.join(terms) or '0'} = {value}"
    return Reason(name, value, "pF", formula, parts, rule, "physics: capacitances in parallel add")


def _limit(rig: Rig, base: str, section: InstrumentSection) -> Reason:
    one, value = limit(rig, "capacitance", CABLE_LIMIT), decimals(section.limit_pf, 0)
    formula = f"{value}, {'that of practice' if one.source else 'as stated'}"
    rule = "the rig's own limit, else that of practice"
    return Reason(f"{base}.limit", value, "pF", formula, (one,), rule, one.source or STATED)


def _percent(base: str, section: InstrumentSection, cable: Reason, top: Reason) -> Reason:
    value = told(section.percent)
    formula = _want(section)
    if section.cable_pf is not None:
        limit_pf = section.limit_pf
        (exact,) = operands(lambda cable: decimals(cable / limit_pf * 100), section.cable_pf, least=1)
        formula = f"{exact} / {top.value} × 100 = {value}"
    inputs = (follows("cable", cable), follows("limit", top))
    return Reason(f"{base}.percent", value, "%", formula, inputs, "cable / limit × 100", ARITHMETIC)


def _pickup(base: str, instrument: Instrument, section: InstrumentSection) -> Reason:
    own = stated(f"capacitance of {instrument.name}", instrument.capacitance_pf)
    value = told(section.pickup_pf)
    return Reason(f"{base}.pickup", value, "pF", own.value, (own,), "a stated figure stands", STATED)


def _resonance(
    name: str,
    instrument: Instrument,
    section: InstrumentSection,
    hertz: float | None,
    pf: float | None,
    together: Reason,
) -> Reason:
    inputs = (*known(f"inductance of {instrument.name}", instrument.inductance_h), follows("together", together))
    if hertz is None or pf is None or instrument.inductance_h is None:
        return Reason(name, NOT_KNOWN, "Hz", _want(section), inputs, _RESONANCE, _PHYSICS)
    value, formula = decimals(hertz, 0), resonance_formula(instrument.inductance_h.value, pf, hertz)
    return Reason(name, value, "Hz", formula, inputs, _RESONANCE, _PHYSICS)


def _plain_pf(rig: Rig, base: str, instrument: Instrument, section: InstrumentSection, pickup: Reason) -> Reason:
    """Of the pickup with the plain stage lead alone."""
    mm, named = instrument.plain_mm, instrument.plain_cable
    cable = rig.stock.cables.get(named or "")
    per_m = None if cable is None else cable.capacitance_pf_per_m
    inputs = (*known("plain lead", mm), *known(f"capacitance of {named}", per_m), follows("pickup", pickup))
    if mm is None or per_m is None or section.pickup_pf is None or section.plain_pf is None:
        return Reason(f"{base}.plain-lead", NOT_KNOWN, "pF", _want(section), inputs, _ALL_OFF, _PHYSICS)
    value = decimals(section.plain_pf)
    terms = operands(lambda m, pf, own: decimals(m * pf + own), mm.value / 1000, per_m.value, section.pickup_pf)
    formula = f"{terms[0]} × {terms[1]} + {terms[2]} = {value}"
    rule = "the plain stage lead and the pickup in parallel"
    return Reason(f"{base}.plain-lead", value, "pF", formula, inputs, rule, "physics: capacitances in parallel add")


REASONS = first_section
