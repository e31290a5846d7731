"""A rig's facts at the two ends of a section: what a source is, what an input loads it with, and which facts are missing."""

from __future__ import annotations

from math import inf

from rigc.analysis.signal.loading.section import Load, Pickup
from rigc.analysis.signal.loading.section_walk import OUTSIDE, SectionEnd
from rigc.analysis.signal.unit_mode import BRIDGED, BYPASSED, DEAD, STAGE, TRACK
from rigc.facts.loading import TREADLE_SHARE
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.model.ways.state_ways import BLOCKED, UNKNOWN
from rigc.source import Span
from rigc.traced.given import Mentioned, at_place, ours, stated
from rigc.traced.reason import NOT_KNOWN
from rigc.traced.term import Traced, number
from rigc.traced.term import Unknown as NotKnown
from rigc.traced.units import IMPEDANCE

Told = tuple[Traced, str]
"""A value, and what is missing where there is none."""


def load_of(rig: Rig, end: SectionEnd) -> Load:
    """What an input is to its section; a jack where the rig ends, and a unit off without an output, load nothing."""
    unit = rig.units.get(end.port.thing)
    wants = unit is not None and "wants pickup" in unit.flags and end.what == STAGE
    impedance, missing = _impedance(rig, end)
    return Load(end.port, end.what, impedance, wants, missing)


def source_of(rig: Rig, port: Port, how: str) -> Told:
    """The impedance that drives a section; a treadle's track at its worst is a quarter of it."""
    label, jack = f"impedance of {port}", rig.jack(port)
    span = rig.things[port.thing].declared if jack is None else jack.span
    instrument = rig.instruments.get(port.thing)
    if instrument is not None and instrument.kind == "source":
        return _told(label, None if jack is None else jack.impedance_ohm, f"the impedance of '{port}'", span)
    if instrument is not None:
        missing = f"the output resistance of '{port.thing}'"
        return _told(f"resistance of {port.thing}", instrument.resistance_ohm, missing, instrument.declared)
    if how == OUTSIDE:
        return _told(f"what feeds {port}", None, f"what feeds '{port}'", span)
    if how == UNKNOWN:
        return _bypass_not_known(rig, f"bypass of {port.thing}", port.thing, span)
    unit = rig.units[port.thing]
    if how == TRACK and unit.track_ohm is not None:
        return ours(TREADLE_SHARE) * stated(f"track of {port.thing}", unit.track_ohm, IMPEDANCE), ""
    fact = None if jack is None else jack.bypassed_ohm if how == BYPASSED else jack.impedance_ohm
    missing = f"the track of '{port.thing}'" if how == TRACK else f"the impedance of '{port}'"
    return _told(label, fact, missing, span)


def pickup_of(rig: Rig, instrument: Instrument, through_air: bool) -> Pickup:
    """An instrument's own part in its resonance. Its plain lead is the one stated so; else its own, if no body-pack has that."""
    name = instrument.name
    own = instrument.plain_mm is None and not through_air
    mm = instrument.lead_mm if own else instrument.plain_mm
    cable = rig.stock.cables.get((instrument.lead_cable if own else instrument.plain_cable) or "")
    per_m = stated(
        "cable of the plain lead" if cable is None else f"capacitance of {cable.name}",
        None if cable is None else cable.capacitance_pf_per_m,
    )
    return Pickup(
        name,
        stated(f"inductance of {name}", instrument.inductance_h),
        stated(f"resistance of {name}", instrument.resistance_ohm, IMPEDANCE),
        stated(f"capacitance of {name}", instrument.capacitance_pf),
        stated(f"volume of {name}", instrument.volume_ohm, IMPEDANCE),
        _turned(f"volume of {name}", instrument.volume_setting),
        stated(f"tone of {name}", instrument.tone_ohm, IMPEDANCE),
        _turned(f"tone of {name}", instrument.tone_setting),
        stated(f"tone of {name}", instrument.tone_nf),
        stated("plain lead", mm) * per_m / 1000,
    )


def through_air(rig: Rig, loads: tuple[Load, ...]) -> bool:
    """Whether an instrument plays into a body-pack."""
    jacks = (rig.jack(load.port) for load in loads)
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


def _impedance(rig: Rig, end: SectionEnd) -> Told:
    label, jack = f"{end.port} ({end.what})", rig.jack(end.port)
    span = rig.things[end.port.thing].declared if jack is None else jack.span
    if end.what in (OUTSIDE, DEAD, BLOCKED):
        return at_place(label, inf, span, "loads nothing"), ""
    if end.what == UNKNOWN:
        return _bypass_not_known(rig, label, end.port.thing, span)
    fact = None if jack is None else jack.bypassed_ohm if end.what in (BYPASSED, BRIDGED) else jack.impedance_ohm
    if end.what == TRACK and fact is None:
        fact = rig.units[end.port.thing].track_ohm
    return _told(label, fact, f"the impedance of '{end.port}'", span)


def _bypass_not_known(rig: Rig, label: str, name: str, span: Span | None) -> Told:
    """Of what states no bypass, and of what states `bypass unknown`."""
    what = f"how '{name}' is bypassed"
    nothing, _ = _told(label, None, what, span)
    unit = rig.units.get(name)
    return nothing, f"{what} is not {'said' if unit is None or unit.bypass is None else 'known'}"


def _told(label: str, fact: Quantity | None, what: str, span: Span | None) -> Told:
    if fact is None:
        return NotKnown((what,), Mentioned(label, NOT_KNOWN, span, "")), f"{what} is not said"
    return stated(label, fact, IMPEDANCE), ""


def _turned(label: str, percent: Quantity | None) -> Traced:
    """How far a control is turned up; full where that is not said."""
    turned: Traced = number(1.0) if percent is None else stated(label, percent) / 100
    return turned
