"""How each section of the signal path is loaded: `marl.out.loading.cable`, `.corner`, `.loss`; `guitar.out.loading.peak`.

A jack that drives several sections in different states has `loading-2`, `loading-3` and so on, in the order of the sheet.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.loading import Loading
from rigc.analysis.reasons.inputs import derived, known, ours, placed, stated
from rigc.analysis.reasons.operands import Ohm, operands
from rigc.analysis.reasons.section_parts import length_of
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.section_leads import SectionLead
from rigc.analysis.signal.source_network import bridging_db, corner_hz
from rigc.analysis.signal.state_words import ohms, states_told
from rigc.analysis.signal.unit_mode import TRACK
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import corner_khz
from rigc.facts.loading import TREADLE_SHARE
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.reason import NOT_KNOWN, Input, Reason

_SUMS = "physics: capacitances in parallel add"


class _Parts(Record):
    """What the leads of all sections are looked up in."""

    rig: Rig
    marks: dict[str, Lead]
    lengths: CableLengths


def section_loading(rig: Rig, loading: Loading, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """The figures of each section: lengths and capacitances of all, corner and loss of a driven one."""
    parts = _Parts(rig, {lead.mark: lead for lead in leads.all}, lengths)
    for name, section in named_sections(loading):
        state = states_told(loading, (section,))
        length, cable = _length(parts, name, section, state), _cable(parts, name, section)
        source, load = _source(rig, name, section), _load(rig, name, section)
        yield from (length, cable, load)
        if not section.from_pickup:
            yield from (source, _corner(name, section, source, cable), _loss(name, section, source, load))


def named_sections(loading: Loading) -> list[tuple[str, Section]]:
    """Every section with the name that its reasons begin with."""
    counts: dict[Port, int] = {}
    found = []
    for section in loading.sections:
        number = counts[section.source] = counts.get(section.source, 0) + 1
        found.append((f"{section.source}.loading{'' if number == 1 else f'-{number}'}", section))
    return found


def wanting(section: Section) -> str:
    """What is said where a figure is not known."""
    return f"for want of: {', '.join(section.missing)}"


def _length(parts: _Parts, name: str, section: Section, state: str) -> Reason:
    lengths = [lead.length_mm for lead in section.leads]
    inputs = (placed("in state", state, None), *_lengths(parts, section))
    rule = "all leads from what drives the section to its inputs; a unit that is off and bypassed by wire is only cable"
    if section.length_m is None:
        return Reason(f"{name}.length", NOT_KNOWN, "m", wanting(section), inputs, rule, _SUMS)
    value = decimals(section.length_m, 3)
    formula = f"({' + '.join(decimals(each or 0, 1) for each in lengths) or '0'}) / 1000 = {value}"
    return Reason(f"{name}.length", value, "m", formula, inputs, rule, _SUMS)


def _lengths(parts: _Parts, section: Section) -> tuple[Input, ...]:
    instrument = parts.rig.instruments.get(section.source.thing)
    return tuple(length_of(lead, parts.marks.get(lead.mark), instrument, parts.lengths) for lead in section.leads)


def _cable(parts: _Parts, name: str, section: Section) -> Reason:
    inputs = [*_lengths(parts, section)]
    stock = parts.rig.stock.cables
    named = dict.fromkeys(_cable_name(parts, section, lead) for lead in section.leads)
    for cable in (stock[each] for each in named if each in stock):
        inputs += known(f"capacitance of {cable.name}", cable.capacitance_pf_per_m)
    rule = "length × capacitance per metre, lead by lead"
    if section.cable_pf is None:
        return Reason(f"{name}.cable", NOT_KNOWN, "pF", wanting(section), tuple(inputs), rule, _SUMS)
    value = decimals(section.cable_pf, 1)
    terms = [
        f"{decimals((lead.length_mm or 0) / 1000, 4)} × {decimals(lead.pf_per_m or 0, 1)}" for lead in section.leads
    ]
    return Reason(f"{name}.cable", value, "pF", f"{' + '.join(terms) or '0'} = {value}", tuple(inputs), rule, _SUMS)


def _cable_name(parts: _Parts, section: Section, lead: SectionLead) -> str:
    made, instrument = parts.marks.get(lead.mark), parts.rig.instruments.get(section.source.thing)
    return (made.cable if made is not None else instrument.lead_cable if instrument is not None else None) or ""


def _source(rig: Rig, name: str, section: Section) -> Reason:
    jack, unit = rig.jack(section.source), rig.units.get(section.source.thing)
    treadle = section.how == TRACK and unit is not None and unit.track_ohm is not None
    fact = unit.track_ohm if treadle and unit is not None else None if jack is None else jack.impedance_ohm
    inputs: tuple[Input, ...] = known(f"{'track' if treadle else 'impedance'} of {section.source}", fact)
    rule = "the output's impedance; of a treadle a quarter of its track, its worst, at half travel"
    if section.source_ohm is None:
        return Reason(f"{name}.source", NOT_KNOWN, "", wanting(section), inputs, rule, TREADLE_SHARE.source)
    value = ohms(section.source_ohm)
    formula = f"{value}, as stated"
    if treadle and fact is not None:
        formula, inputs = (
            f"{decimals(TREADLE_SHARE.value, 2)} × {ohms(fact.value)} = {value}",
            (*inputs, ours(TREADLE_SHARE)),
        )
    return Reason(f"{name}.source", value, "", formula, inputs, rule, TREADLE_SHARE.source)


def _load(rig: Rig, name: str, section: Section) -> Reason:
    inputs: list[Input] = []
    for load in section.loads:
        jack = rig.jack(load.port)
        fact = None if jack is None else jack.impedance_ohm
        told = fact is not None and fact.value == load.ohm
        words = NOT_KNOWN if load.ohm is None else "loads nothing" if load.ohm == inf else ohms(load.ohm)
        span = rig.things[load.port.thing].declared if jack is None else jack.span
        inputs.append(
            stated(f"{load.port} ({load.what})", fact) if told else placed(f"{load.port} ({load.what})", words, span)
        )
    rule, source = "resistances in parallel: 1 / (1/R1 + 1/R2 ...)", "physics: resistances in parallel"
    ohm = section.load_ohm
    if ohm is None:
        return Reason(f"{name}.load", NOT_KNOWN, "", wanting(section), tuple(inputs), rule, source)
    value = "none" if ohm == inf else ohms(ohm)
    parts = [ohms(load.ohm) for load in section.loads if load.ohm not in (None, inf) and load.ohm is not None]
    formula = f"{' || '.join(parts) or 'no input loads it'} = {value}" if parts else "no input loads it"
    return Reason(f"{name}.load", value, "", formula, tuple(inputs), rule, source)


def _corner(name: str, section: Section, source: Reason, cable: Reason) -> Reason:
    inputs = (derived("source", source.value, "", source.name), derived("cable", cable.value, "pF", cable.name))
    rule, where = "treble corner = 1 / (2π R C)", "physics: low-pass of a resistance and a capacitance"
    hertz = section.corner_hz
    if hertz is None or hertz == inf:
        why = wanting(section) if hertz is None else "no cable or no source impedance: no corner"
        return Reason(
            f"{name}.corner", NOT_KNOWN if hertz is None else "none", "" if hertz else "kHz", why, inputs, rule, where
        )
    value, ohm, pf = corner_khz(hertz), section.source_ohm or 0.0, section.cable_pf or 0.0
    parts = operands(lambda ohm, pf: corner_khz(corner_hz(ohm, pf)), Ohm(ohm), pf, least=1)
    formula = f"1 / (2π × {parts[0]} × {parts[1]} pF) = {value} kHz"
    return Reason(f"{name}.corner", value, "kHz", formula, inputs, rule, where)


def _loss(name: str, section: Section, source: Reason, load: Reason) -> Reason:
    inputs = (derived("source", source.value, "", source.name), derived("inputs", load.value, "", load.name))
    rule, where = "loss = 20 log10(Zin / (Zin + Zout))", "physics: voltage divider"
    if section.loss_db is None:
        return Reason(f"{name}.loss", NOT_KNOWN, "dB", wanting(section), inputs, rule, where)
    value = decimals(section.loss_db, 2)
    formula = "no input loads it: 0 dB"
    if section.load_ohm is not None and section.load_ohm != inf and section.source_ohm is not None:
        inputs_ohm, source_ohm = operands(
            lambda load, source: decimals(bridging_db(source, load), 2), Ohm(section.load_ohm), Ohm(section.source_ohm)
        )
        formula = f"20 log10({inputs_ohm} / ({inputs_ohm} + {source_ohm})) = {value} dB"
    return Reason(f"{name}.loss", value, "dB", formula, inputs, rule, where)


REASONS = section_loading
