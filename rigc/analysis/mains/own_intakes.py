"""Rig -> what amps, desks, keyboards and all else with a mains lead of its own take of the mains: `stack.takes-va`."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.facts.mains import POWER_FACTOR
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Instrument, Unit
from rigc.record import Record
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import ours, stated
from rigc.traced.units import VOLT_AMPERES

_LOWEST = min(POWER_FACTOR.values(), key=lambda fact: fact.value)


class OwnIntakes(Record):
    """Those in use that say what they take, in VA, in order of declaration; `usual` names those whose plate says watts, of which the lowest usual
    power factor makes the most volt-amperes."""

    all: dict[str, AnyFigure]
    usual: tuple[str, ...]


def own_intakes(rig: Rig) -> OwnIntakes:
    """S as stated, or P / power factor."""
    plugged = {name for name, _, _ in rig.power.plugged}
    units = {*(each.name for each in used_units(rig)), *plugged}
    used: tuple[Unit | Instrument, ...] = (
        *(each for name, each in rig.units.items() if name in units),
        *rig.instruments.values(),
    )
    things = {each.name: each for each in used}
    found = {name: figure for name, each in things.items() if (figure := _taken(each)) is not None}
    return OwnIntakes(found, tuple(name for name in found if things[name].takes_va is None))


def used_there(rig: Rig, scenario: Scenario) -> tuple[Unit | Instrument, ...]:
    """What may have a mains lead of its own and is used there: of amps, desks and listeners those that the scenario names."""
    ends = [name for name, unit in rig.units.items() if unit.ends] if scenario.amps is None else scenario.amps
    units = [rig.units[name] for name in ends] + [unit for unit in used_units(rig) if not unit.ends]
    return (*units, *rig.instruments.values())


def on_mains(rig: Rig, scenario: Scenario) -> tuple[Unit | Instrument, ...]:
    """Those that say what mains they take. What runs on its battery only is charged of it."""
    return tuple(each for each in used_there(rig, scenario) if each.mains)


def _taken(thing: Unit | Instrument) -> AnyFigure | None:
    name = thing.name
    if thing.takes_va is not None:
        return figure(
            f"{name}.takes-va",
            stated(f"what {name} takes", thing.takes_va),
            VOLT_AMPERES,
            rule="as its plate says",
            source="stated",
            label=f"{name} takes",
        )
    if thing.takes_w is None:
        return None
    return figure(
        f"{name}.takes-va",
        stated(f"what {name} takes", thing.takes_w) / ours(_LOWEST),
        VOLT_AMPERES,
        rule="volt-amperes = W / power factor",
        source="physics: apparent power",
        label=f"{name} takes",
    )


COMPUTE = own_intakes
