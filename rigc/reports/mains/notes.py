"""What the mains sheet says in words: the board's inlets and what its figures leave out."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.facts.mains import LOW_AC_V, LOW_DC_V, LOWER_DC_V
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph
from rigc.reports.mains.places import SOURCES
from rigc.reports.mains.supplies import inlet_words
from rigc.traced.figure import Figure


def notes(rig: Rig, power: PowerAssignment, loads: MainsLoads, fuses: Fuses) -> Paragraph:
    """How to read the figures, and what they leave out."""
    lines = [
        *_places(rig, loads),
        *_inlets(rig, loads),
        *_left_out(rig, power),
        *_fuses(loads, fuses),
        *_low_voltage(power),
    ]
    usual = [name for name, load in loads.all.items() if load.by_kind]
    if usual:
        lines.append(
            f"'usual' at {', '.join(usual)}: efficiency or power factor are those of its kind, from memory; read its label."
        )
    lines.append(
        "Switching on: toroids and switch-mode supplies draw peaks of 10 to 40 A for less than a millisecond (from memory); "
        "a breaker may trip when many start at once."
    )
    lines.append("A ? stands for what is not stated, or in neither table.")
    return Paragraph("reading", (*lines, *SOURCES), heading="How to read it")


def _places(rig: Rig, loads: MainsLoads) -> list[str]:
    if any(scenario.mains is not None for scenario in rig.scenarios.values()):
        return []
    if not loads.all:
        return []
    return ["No scenario states its mains: whether the supplies fit there is not checked."]


def _inlets(rig: Rig, loads: MainsLoads) -> list[str]:
    """The board's inlets with their rating, and the highest current of all supplies in any scenario."""
    currents = [each for each in loads.amperes.values() if isinstance(each, Figure)]
    most = f"; all supplies take {max(currents).text} A at most" if currents else ""
    return [
        f"Inlet of the board: {panel.name}.{jack.name}, {inlet_words(str(jack.connector))} (IEC 60320){most}."
        for panel in rig.panels.values()
        for jack in panel.jacks
        if jack.role == "inlet"
    ]


def _left_out(rig: Rig, power: PowerAssignment) -> list[str]:
    names = [unit.name for unit in rig.units.values() if unit.may_be_earthed]
    own = [f"Not in these sums: {', '.join(names)} (amps and desks have their own mains leads)."] if names else []
    made = [
        f"{unit.name} for {' or '.join(each.typed for each in unit.mains)}" for unit in rig.units.values() if unit.mains
    ]
    own += [f"Made: {'; '.join(made)}."] if made else []
    packs = [supply.name for supply in used_supplies(rig, power) if not supply.takes_mains]
    packs += [unit.name for unit in rig.units.values() if unit.ends and unit.on_battery]
    return [*own, *([f"From batteries only, no mains while it plays: {', '.join(packs)}."] if packs else [])]


def _fuses(loads: MainsLoads, fuses: Fuses) -> list[str]:
    without = [name for name in loads.all if name not in {each.thing for each in fuses.all}]
    return [f"Fuse of {', '.join(without)}: not stated; as marked on it."] if without else []


def _low_voltage(power: PowerAssignment) -> list[str]:
    """The highest voltages behind the supplies, beside the ceilings of safety extra-low voltage."""
    lines = []
    for current, ceiling, lower in (("dc", LOW_DC_V, LOWER_DC_V), ("ac", LOW_AC_V, None)):
        volts = [tap.volts for tap in power.taps.values() if tap.current == current]
        if volts:
            also = "" if lower is None else f"; product rules may be lower: {lower.value:g} V ({lower.source})"
            lines.append(
                f"Highest {current.upper()} voltage on the board: {max(volts):g} V; safety extra-low voltage ends at "
                f"{ceiling.value:g} V ({ceiling.source}){also}."
            )
    return lines
