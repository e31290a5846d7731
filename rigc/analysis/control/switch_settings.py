"""Rig and its power -> every switch and control that must stand in a certain position, by scenario."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.ground.lift_positions import lift_positions
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.own_intakes import on_mains
from rigc.analysis.mains.primary import Taker, primary
from rigc.model.rig import Rig, Scenario
from rigc.record import Record
from rigc.traced.given import unstated

GROUND_LIFT, SELECTOR, STEP, FUSE = "ground lift", "mains voltage selector", "step transformer before it", "fuse"
_ORDER = (STEP, SELECTOR, FUSE, GROUND_LIFT)


class SwitchSetting(Record):
    """What stands `at` a place: which `switch`, its `position`, the `scenarios` in which it stands so (empty: all), and the position
    `new` in which it leaves its maker, empty where that is not stated."""

    at: str
    switch: str
    position: str
    scenarios: tuple[str, ...] = ()
    new: str = ""


class SwitchSettings(Record):
    """Outlets, then step transformers, selectors, the fuses that go with them, and ground lifts by scenario, then blenders and units."""

    all: tuple[SwitchSetting, ...]


def switch_settings(rig: Rig, power: PowerAssignment, fuses: Fuses) -> SwitchSettings:
    """Only what the source states or what follows from it; a switch of which nothing is said is not listed."""
    return SwitchSettings((*_outlets(rig, power), *_by_scenario(rig, power, fuses), *_blends(rig), *_units(rig)))


def _outlets(rig: Rig, power: PowerAssignment) -> Iterator[SwitchSetting]:
    for port, load in power.loads.items():
        outlet = outlet_at(rig, port)
        if outlet is not None and load.units and len(outlet.ratings) > 1:
            first = outlet.ratings[0]
            yield SwitchSetting(str(port), "outlet voltage", f"{load.volts:g} V", new=f"{first.volts.value:g} V")


def _by_scenario(rig: Rig, power: PowerAssignment, fuses: Fuses) -> Iterator[SwitchSetting]:
    """Scenarios that want the same position of the same switch share a setting."""
    found: dict[tuple[str, str, str], list[str]] = {}
    for scenario in rig.scenarios.values():
        for supply, volts in scenario.selectors:
            found.setdefault((supply, SELECTOR, volts.typed), []).append(scenario.name)
        for supply, position in _selectors_left(rig, power, scenario):
            found.setdefault((supply, SELECTOR, position), []).append(scenario.name)
        for supply, words in _steps(rig, power, scenario):
            found.setdefault((supply, STEP, words), []).append(scenario.name)
        for lift in lift_positions(rig, scenario):
            found.setdefault((str(lift.port), GROUND_LIFT, lift.position), []).append(scenario.name)
    for each in fuses.all:
        if each.fuse.at_v is not None and len(fuses.of(each.thing)) > 1:
            here = each.scenarios or (tuple(rig.scenarios) if each.wanted else ())
            found.setdefault((each.thing, FUSE, each.fuse.words), []).extend(here)
    found = {key: names for key, names in found.items() if names}
    new = {str(lift.port): lift.new for lift in lift_positions(rig, None)}
    if not rig.scenarios:
        found = {(at, GROUND_LIFT, position): [] for at, position in new.items()}
    for (at, switch, position), names in sorted(found.items(), key=lambda each: (each[0][0], _ORDER.index(each[0][1]))):
        came = new.get(at, "") if switch == GROUND_LIFT else ""
        yield SwitchSetting(at, switch, position, () if len(names) == len(rig.scenarios) else tuple(names), came)


def _steps(rig: Rig, power: PowerAssignment, scenario: Scenario) -> Iterator[tuple[str, str]]:
    """The step transformer of each supply that has one here; elsewhere none stands before it."""
    fed = {each.name for each in (*used_supplies(rig, power), *on_mains(rig, scenario))}
    for name, first, second, most in scenario.transformers:
        if name in fed:
            yield name, f"{first.typed} to {second.typed}, {most.typed}"


def _selectors_left(rig: Rig, power: PowerAssignment, scenario: Scenario) -> Iterator[tuple[str, str]]:
    """Supplies with a selector of which the scenario says nothing: it stands as the last country left it, and the position that takes
    the mains here is the one to look for."""
    stated = {name for name, _ in scenario.selectors}
    takers: tuple[Taker, ...] = (*used_supplies(rig, power), *on_mains(rig, scenario))
    for supply in takers:
        if scenario.mains is not None and len(supply.mains) > 1 and supply.name not in stated:
            volts = primary(scenario, scenario.mains, supply, unstated(f"what {supply.name} takes")).position_v
            if volts is not None:
                yield supply.name, f"{volts:g} V"


def _blends(rig: Rig) -> Iterator[SwitchSetting]:
    """The shares of a blender, and the polarity of its loops where one of them is inverted."""
    for blend in rig.blends:
        turned = any(path.inverted for path in blend.paths)
        for path in blend.paths:
            way = "dry" if not path.wet else f"wet through {' and '.join(stop.thing for stop in path.stops)}"
            yield SwitchSetting(blend.unit, f"share of {way}", path.share.typed)
            if path.wet and turned:
                yield SwitchSetting(blend.unit, f"polarity of {way}", "inverted" if path.inverted else "normal")


def _units(rig: Rig) -> Iterator[SwitchSetting]:
    for unit in used_units(rig):
        if "set wet" in unit.flags:
            yield SwitchSetting(unit.name, "dry sound", "off, wet only")


COMPUTE = switch_settings
