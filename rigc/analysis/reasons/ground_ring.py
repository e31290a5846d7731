"""What the ground sheet counts and reckons: `ground-1.earths`, `ring-1.area`, `.hertz`, `.hum`, `.level`, `.gain`.

Systems and rings are numbered through in the order of the sheet's tables.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import log10, pi

from rigc.analysis.computations.ground_systems import GroundSystems
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.ring_hum import Hum, RingHum
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.states import GroundState, GroundSystem
from rigc.analysis.reasons.inputs import derived, known, ours, placed
from rigc.analysis.reasons.operands import operands
from rigc.diagnostics.decimals import decimals, fixed
from rigc.diagnostics.figures import plain
from rigc.facts.hum import FIELD_UT, HERTZ, NOMINAL_MV
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Input, Reason


def ground_ring(rig: Rig, grounds: GroundSystems, hums: RingHum, leads: Leads) -> Iterator[Reason]:
    """One reason for each joined system, five for each ring that matters."""
    systems = [(state, system) for state in grounds.states for system in state.systems]
    for number, (state, system) in enumerate(systems, 1):
        yield _earths(rig, f"ground-{number}", state, system)
    rings = [(state, hum) for state, found in zip(grounds.states, hums.states, strict=True) for hum in found]
    marks = {lead.mark: lead for lead in leads.all}
    for number, (state, hum) in enumerate(rings, 1):
        yield from _ring(rig, f"ring-{number}", state, hum, marks)


def _earths(rig: Rig, name: str, state: GroundState, system: GroundSystem) -> Reason:
    value = str(len(system.earths))
    inputs: list[Input] = [placed("scenarios", ", ".join(state.scenarios) or "any", None)]
    for thing in (*system.earths, *system.unknown):
        told = "earth not stated" if thing in system.unknown else "earthed"
        inputs.append(placed(thing, told, rig.things[thing].declared if thing in rig.things else None))
    inputs.append(placed("members", ", ".join(system.members), None))
    formula = f"{' + '.join(system.earths) or 'none'} = {value}"
    rule = "earth references of grounds that are joined: exactly one is right, two make a ring through the mains"
    return Reason(f"{name}.earths", value, "", formula, tuple(inputs), rule, "common practice, no source")


def _ring(rig: Rig, name: str, state: GroundState, hum: Hum, marks: dict[str, Lead]) -> Iterator[Reason]:
    area, hertz = _area(name, hum, marks), _hertz(rig, name, state, hum)
    yield from (area, hertz)
    volts = NOT_KNOWN if hum.volts is None else fixed(hum.volts * 1e6)
    inputs = (
        derived("area", area.value, "m²", area.name),
        derived("frequency", hertz.value, "Hz", hertz.name),
        ours(FIELD_UT),
    )
    want = "for want of the area"
    formula = want
    if hum.volts is not None:
        per_m2 = 2 * pi * hum.hertz * FIELD_UT.value
        (square,) = operands(lambda area: fixed(per_m2 * area), hum.area_m2 or 0.0, least=5)
        formula = f"2π × {hertz.value} Hz × {plain(FIELD_UT.value)} µT × {square} m² = {volts} µV"
    physics = "physics: Faraday's law, the face square to the field, the worst case"
    yield Reason(f"{name}.hum", volts, "µV", formula, inputs, "V = 2πfBA", physics)
    level = NOT_KNOWN if hum.level_db is None else fixed(hum.level_db)
    formula = want
    if hum.level_db is not None and hum.volts:
        (exact,) = operands(lambda hum: fixed(20 * log10(hum / 1000 / NOMINAL_MV.value)), hum.volts * 1e6, least=1)
        formula = f"20 log10({exact} µV / {plain(NOMINAL_MV.value)} mV) = {level}"
    inputs = (derived("hum", volts, "µV", f"{name}.hum"), ours(NOMINAL_MV), ours(FIELD_UT))
    yield Reason(
        f"{name}.level", level, "dB", formula, inputs, "the hum against instrument level, before any gain", physics
    )
    yield _gain(rig, name, hum, marks)


def _area(name: str, hum: Hum, marks: dict[str, Lead]) -> Reason:
    value = NOT_KNOWN if hum.area_m2 is None else fixed(hum.area_m2, 3)
    inputs = [placed("ring", ring_words(hum.ring), None)]
    inputs += [placed(mark, f"{marks[mark].start} -> {marks[mark].end}", marks[mark].span) for mark in hum.ring.marks]
    formula = f"|Σ (x₁ y₂ − x₂ y₁)| / 2 = {plain(round((hum.area_m2 or 0) * 1e6, 1))} mm² = {value} m²"
    if hum.area_m2 is None:
        formula = hum.why_not
    rule = "the polygon of its leads in plan, each along its route in turn; inside things the way is straight"
    return Reason(f"{name}.area", value, "m²", formula, tuple(inputs), rule, "geometry: area of a polygon")


def _hertz(rig: Rig, name: str, state: GroundState, hum: Hum) -> Reason:
    mains = [(each, rig.scenarios[each].mains) for each in state.scenarios]
    inputs: tuple[Input, ...] = tuple(
        placed(f"mains of {each}", one.typed, one.span) for each, one in mains if one is not None
    )
    told = [plain(one.hertz_high) for _, one in mains if one is not None and one.hertz_high]
    if not told:
        inputs = (*inputs, ours(HERTZ))
    value = plain(hum.hertz)
    formula = (
        f"the highest of {', '.join(dict.fromkeys(told))} = {value}" if told else f"{value}: no scenario states one"
    )
    rule = "the highest mains frequency of the scenarios: it induces most"
    return Reason(f"{name}.hertz", value, "Hz", formula, inputs, rule, "physics: the voltage grows with the frequency")


def _gain(rig: Rig, name: str, hum: Hum, marks: dict[str, Lead]) -> Reason:
    value = f"{'≥ ' if hum.gain.unknown else ''}{plain(hum.gain.most_db)}"
    audio = [marks[mark] for mark in hum.ring.marks if marks[mark].signal == "audio"]
    inputs: list[Input] = [placed(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in audio]
    inputs += [each for unit in rig.units.values() for each in known(f"gain of {unit.name}", unit.gain_db)]
    unknown = f"; not stated: {', '.join(hum.gain.unknown)}" if hum.gain.unknown else ""
    formula = f"the most that follows {', '.join(lead.mark for lead in audio) or 'it'}: {decimals(hum.gain.most_db, 1)} dB{unknown}"
    rule = "the gains of the units behind it, on the way that lifts most; amps and desks are not counted"
    return Reason(f"{name}.gain", value, "dB", formula, tuple(inputs), rule, "arithmetic on stated gains")


REASONS = ground_ring
