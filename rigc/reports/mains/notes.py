"""What the mains sheet says in words: the board's inlets and what its figures leave out."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.facts.mains import LOW_AC_V, LOW_DC_V, LOWER_DC_V
from rigc.model.rig import Rig
from rigc.model.things import ENDS, Instrument, Supply, Unit
from rigc.reports.content import Paragraph
from rigc.reports.mains.places import SOURCES
from rigc.reports.mains.supplies import inlet_words
from rigc.traced.figure import Figure


def notes(rig: Rig, power: PowerAssignment, loads: MainsLoads, fuses: Fuses) -> Paragraph:
    """How to read the figures, and what they leave out."""
    lines = [
        *_places(rig, loads),
        *_inlets(rig, loads),
        *_left_out(rig, power, loads),
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


def _left_out(rig: Rig, power: PowerAssignment, loads: MainsLoads) -> list[str]:
    things: tuple[Unit | Instrument, ...] = (*rig.units.values(), *rig.instruments.values())
    names = [each.name for each in things if each.may_be_earthed and each.name not in loads.own.all]
    own = (
        [f"Not in these sums: {', '.join(names)} (with mains leads of their own; none says what it takes)."]
        if names
        else []
    )
    said = [f"{name} {taken.text} VA" for name, taken in loads.own.all.items()]
    own += (
        [f"'With amps' are the supplies and {', '.join(said)}; a scenario counts those that are used in it."]
        if said
        else []
    )
    if loads.own.usual:
        own.append(
            f"Of {', '.join(loads.own.usual)} only the watts are stated: the volt-amperes are those of the lowest usual power factor, from memory; "
            "read the plate."
        )
    made = [f"{each.name} {' or '.join(it.typed for it in each.mains)}" for each in things if each.mains]
    own += [f"Made for: {'; '.join(made)}."] if made else []
    packs = [_pack(supply) for supply in used_supplies(rig, power) if not supply.takes_mains]
    packs += [
        _pack(each) for each in things if each.on_battery and (each.mains or each.may_be_earthed or each.kind in ENDS)
    ]
    return [*own, *([f"From batteries only, no mains while it plays: {', '.join(packs)}."] if packs else [])]


def _pack(thing: Supply | Unit | Instrument) -> str:
    """Its name, with what its charger takes."""
    charger = " or ".join(each.typed for each in thing.mains)
    return f"{thing.name} (its charger takes {charger})" if charger else thing.name


def _fuses(loads: MainsLoads, fuses: Fuses) -> list[str]:
    without = [name for name in (*loads.all, *loads.own.all) if name not in {each.thing for each in fuses.all}]
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
