"""What a passive instrument sounds like into its section: `guitar.out.loading.total`, `.resonance`, `.peak`, `.at-5khz`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.loading import Loading
from rigc.analysis.reasons.inputs import derived, known, stated
from rigc.analysis.reasons.operands import operands
from rigc.analysis.reasons.resonance import resonance_formula
from rigc.analysis.reasons.section_loading import named_sections, wanting
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.source_network import HIGH_HZ, LOW_HZ, TOLD_HZ, SourceNetwork
from rigc.analysis.signal.state_words import ohms
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.traced.reason import NOT_KNOWN, Input, Reason

SILENT = "silent"
_PLAIN_RULE = "against the same guitar on its plain stage lead into the same inputs"
_NODES = "physics: nodal analysis of pickup, controls, cable and all inputs (two nodes)"


def pickup_response(rig: Rig, loading: Loading) -> Iterator[Reason]:
    """The figures of each section that a passive instrument drives, curve by curve as the sheet gives them."""
    for name, section in named_sections(loading):
        if section.from_pickup:
            instrument = rig.instruments[section.source.thing]
            parts = _parts(name, instrument, section)
            total = _total(name, instrument, section)
            yield total
            yield _resonance(name, instrument, section, total)
            yield from _response(name, section, parts)


def _parts(name: str, instrument: Instrument, section: Section) -> tuple[Input, ...]:
    what = instrument.name
    load = section.load_ohm
    return (
        *known(f"inductance of {what}", instrument.inductance_h),
        *known(f"resistance of {what}", instrument.resistance_ohm),
        *known(f"capacitance of {what}", instrument.capacitance_pf),
        *known(f"volume of {what}", instrument.volume_ohm, instrument.volume_setting),
        *known(f"tone of {what}", instrument.tone_ohm, instrument.tone_nf, instrument.tone_setting),
        derived("cable", _figure(section.cable_pf, 1), "pF", f"{name}.cable"),
        derived(
            "inputs", NOT_KNOWN if load is None else "none" if load == float("inf") else ohms(load), "", f"{name}.load"
        ),
    )


def _figure(value: float | None, places: int) -> str:
    return NOT_KNOWN if value is None else decimals(value, places)


def _total(name: str, instrument: Instrument, section: Section) -> Reason:
    value, cable = _figure(section.total_pf, 1), _figure(section.cable_pf, 1)
    own = section.pickup.pf if section.pickup is not None else None
    inputs = (
        derived("cable", cable, "pF", f"{name}.cable"),
        stated(f"capacitance of {instrument.name}", instrument.capacitance_pf),
    )
    formula = wanting(section)
    if section.cable_pf is not None and own is not None:
        parts = operands(lambda cable, own: decimals(cable + own), section.cable_pf, own, least=1)
        formula = f"{' + '.join(parts)} = {value}"
    return Reason(
        f"{name}.total",
        value,
        "pF",
        formula,
        inputs,
        "cable and pickup in parallel",
        "physics: capacitances in parallel add",
    )


def _resonance(name: str, instrument: Instrument, section: Section, total: Reason) -> Reason:
    value = _figure(section.unloaded_hz, 0)
    inputs = (
        *known(f"inductance of {instrument.name}", instrument.inductance_h),
        derived("total", total.value, "pF", total.name),
    )
    henry = instrument.inductance_h
    formula = wanting(section)
    if section.total_pf is not None and section.unloaded_hz is not None and henry is not None:
        formula = resonance_formula(henry.value, section.total_pf, section.unloaded_hz)
    rule = "unloaded resonance = 1 / (2π √(L C)); controls and inputs pull it lower"
    return Reason(
        f"{name}.resonance",
        value,
        "Hz",
        formula,
        inputs,
        rule,
        "physics: resonance of an inductance with a capacitance",
    )


def _response(name: str, section: Section, parts: tuple[Input, ...]) -> Iterator[Reason]:
    network = section.network
    if network is None:
        for field, unit in (("peak", "Hz"), ("fallen", "Hz"), *((_at(hertz), "dB") for hertz in TOLD_HZ)):
            yield Reason(
                f"{name}.{field}", NOT_KNOWN, unit, wanting(section), parts, "what is missing is not guessed", _NODES
            )
        return
    if network.silent:
        for field, value in (("peak", "none"), ("fallen", "none"), *((_at(hertz), SILENT) for hertz in TOLD_HZ)):
            yield Reason(
                f"{name}.{field}", value, "", "nothing comes through", parts, "a volume control is at 0 %", _NODES
            )
        for hertz in TOLD_HZ:
            yield Reason(_plain_field(name, hertz), SILENT, "", "nothing comes through", parts, _PLAIN_RULE, _NODES)
        return
    yield from _peak(name, network, parts)
    fallen = "none" if network.fallen_hz is None else decimals(network.fallen_hz, 0)
    formula = f"|V(f)| = |V({plain(LOW_HZ)} Hz)| / √2 at {fallen} Hz"
    rule = f"where the response, behind its peak, has fallen 3 dB below that at {plain(LOW_HZ)} Hz"
    yield Reason(f"{name}.fallen", fallen, "Hz" if fallen != "none" else "", formula, parts, rule, _NODES)
    for hertz in TOLD_HZ:
        value = decimals(network.decibel(hertz), 2)
        formula = f"20 log10 |V({plain(hertz)} Hz)| = {value}"
        yield Reason(
            f"{name}.{_at(hertz)}",
            value,
            "dB",
            formula,
            parts,
            "level at the inputs over the pickup's own voltage",
            _NODES,
        )
        yield _against(name, section, network, hertz, parts)


def _peak(name: str, network: SourceNetwork, parts: tuple[Input, ...]) -> Iterator[Reason]:
    rule = f"where the response is highest between {plain(LOW_HZ)} Hz and {plain(HIGH_HZ)} Hz"
    if network.peak_hz is None:
        yield Reason(f"{name}.peak", "none", "", "it is highest at an end of the range", parts, rule, _NODES)
        return
    value, level = decimals(network.peak_hz, 0), decimals(network.decibel(network.peak_hz), 2)
    yield Reason(f"{name}.peak", value, "Hz", f"|V(f)| is highest at {value} Hz", parts, rule, _NODES)
    peak = derived("peak", value, "Hz", f"{name}.peak")
    yield Reason(f"{name}.peak-level", level, "dB", f"20 log10 |V({value} Hz)| = {level}", (peak, *parts), rule, _NODES)


def _against(name: str, section: Section, network: SourceNetwork, hertz: float, parts: tuple[Input, ...]) -> Reason:
    field, rule = _plain_field(name, hertz), _PLAIN_RULE
    apart = section.against_plain_db(hertz)
    if apart is None or section.plain is None:
        return Reason(field, NOT_KNOWN, "dB", "for want of a plain stage lead and its cable", parts, rule, _NODES)
    levels = (network.decibel(hertz), section.plain.decibel(hertz))
    value = decimals(apart, 2)
    at = derived("level here", decimals(levels[0], 2), "dB", f"{name}.{_at(hertz)}")
    own, other = operands(lambda own, other: decimals(own - other, 2), *levels)
    return Reason(field, value, "dB", f"{own} − ({other}) = {value}", (at, *parts), rule, _NODES)


def _plain_field(name: str, hertz: float) -> str:
    return f"{name}.plain-{_at(hertz)[3:]}"


def _at(hertz: float) -> str:
    return f"at-{plain(hertz)}hz" if hertz < 1000 else f"at-{plain(hertz / 1000)}khz"


REASONS = pickup_response
