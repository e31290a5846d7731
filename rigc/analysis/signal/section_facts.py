"""A rig's facts at the two ends of a section: what a source is, what an input loads it with, and which facts are missing."""

from __future__ import annotations

from math import inf

from rigc.analysis.signal.section import Load, Pickup, Section
from rigc.analysis.signal.section_walk import OUTSIDE, SectionEnd
from rigc.analysis.signal.source_network import SourceNetwork
from rigc.analysis.signal.unit_mode import BRIDGED, BYPASSED, DEAD, STAGE, TRACK
from rigc.facts.loading import TREADLE_SHARE
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.state_ways import BLOCKED, UNKNOWN
from rigc.model.things import Instrument

Told = tuple[float | None, str, bool]
"""A value, what is missing where there is none, and whether it is assumed."""


def load_of(rig: Rig, end: SectionEnd) -> tuple[Load, str, bool]:
    """What an input is to its section; a jack where the rig ends, and a unit off without an output, load nothing."""
    unit = rig.units.get(end.port.thing)
    wants = unit is not None and "wants pickup" in unit.flags and end.what == STAGE
    ohm, missing, assumed = _load_ohm(rig, end)
    return Load(end.port, end.what, ohm, wants), missing, assumed


def source_of(rig: Rig, port: Port, how: str) -> Told:
    """The impedance that drives a section; a treadle's track at its worst is a quarter of it."""
    instrument = rig.instruments.get(port.thing)
    if instrument is not None and instrument.kind == "source":
        own = rig.jack(port)
        return _told(None if own is None else own.impedance_ohm, f"the impedance of '{port}' is not said")
    if instrument is not None:
        fact = instrument.resistance_ohm
        return _told(fact, f"the output resistance of '{port.thing}' is not said")
    if how == OUTSIDE:
        return None, f"what feeds '{port}' is not said", False
    if how == UNKNOWN:
        return None, f"how '{port.thing}' is bypassed is not said", False
    unit, jack = rig.units[port.thing], rig.jack(port)
    if how == TRACK and unit.track_ohm is not None:
        return TREADLE_SHARE.value * unit.track_ohm.value, "", unit.track_ohm.assumed
    fact = None if jack is None else jack.bypassed_ohm if how == BYPASSED else jack.impedance_ohm
    what = f"the track of '{port.thing}'" if how == TRACK else f"the impedance of '{port}'"
    return _told(fact, f"{what} is not said")


def pickup_of(rig: Rig, instrument: Instrument, through_air: bool) -> Pickup:
    """An instrument's own part in its resonance. Its plain lead is the one stated so; else its own, if no body-pack has that."""
    own = instrument.plain_mm is None and not through_air
    mm = instrument.lead_mm if own else instrument.plain_mm
    name = instrument.lead_cable if own else instrument.plain_cable
    cable = rig.stock.cables.get(name or "")
    per_m = None if cable is None else cable.capacitance_pf_per_m
    plain = None if mm is None or per_m is None else mm.value * per_m.value / 1000
    return Pickup(_value(instrument.inductance_h), _value(instrument.capacitance_pf), plain)


def through_air(rig: Rig, section: Section) -> bool:
    """Whether an instrument plays into a body-pack."""
    jacks = (rig.jack(load.port) for load in section.loads)
    return any(jack is not None and jack.connector.kind == "wireless" for jack in jacks)


def missing_of(instrument: Instrument) -> tuple[str, ...]:
    """The facts of a passive instrument that its response hangs on and that are not said."""
    wanted = {
        "capacitance": instrument.capacitance_pf,
        "inductance": instrument.inductance_h,
        "resistance": instrument.resistance_ohm,
        "volume control": instrument.volume_ohm,
        "tone control": instrument.tone_ohm,
    }
    if instrument.tone_ohm is not None:
        wanted["tone control's capacitor"] = instrument.tone_nf
    return tuple(f"the {what} of '{instrument.name}' is not said" for what, fact in wanted.items() if fact is None)


def network_of(instrument: Instrument, cable_pf: float | None, load_ohm: float | None) -> SourceNetwork | None:
    """The whole circuit in front of and behind an instrument's jack; None where a part is not known."""
    parts = [instrument.inductance_h, instrument.resistance_ohm, instrument.capacitance_pf]
    controls = [instrument.volume_ohm, instrument.tone_ohm, instrument.tone_nf]
    known = [part.value for part in (*parts, *controls) if part is not None]
    if len(known) < len(parts) + len(controls) or cable_pf is None or load_ohm is None:
        return None
    henry, ohm, pickup, volume, tone, tone_nf = known
    turned, tone_turned = _share(instrument.volume_setting), _share(instrument.tone_setting)
    return SourceNetwork(henry, ohm, pickup, volume, turned, tone, tone_turned, tone_nf * 1000, cable_pf, load_ohm)


def assumed_of(instrument: Instrument) -> bool:
    """Whether one of an instrument's facts is assumed."""
    facts = (instrument.inductance_h, instrument.capacitance_pf, instrument.resistance_ohm)
    return any(fact is not None and fact.assumed for fact in (*facts, instrument.volume_ohm, instrument.tone_ohm))


def _load_ohm(rig: Rig, end: SectionEnd) -> Told:
    if end.what in (OUTSIDE, DEAD, BLOCKED):
        return inf, "", False
    if end.what == UNKNOWN:
        return None, f"how '{end.port.thing}' is bypassed is not said", False
    unit, jack = rig.units[end.port.thing], rig.jack(end.port)
    fact = None if jack is None else jack.bypassed_ohm if end.what in (BYPASSED, BRIDGED) else jack.impedance_ohm
    if end.what == TRACK and fact is None:
        fact = unit.track_ohm
    return _told(fact, f"the impedance of '{end.port}' is not said")


def _told(fact: Quantity | None, missing: str) -> Told:
    return (None, missing, False) if fact is None else (fact.value, "", fact.assumed)


def _value(fact: Quantity | None) -> float | None:
    return None if fact is None else fact.value


def _share(percent: Quantity | None) -> float:
    return 1.0 if percent is None else percent.value / 100
