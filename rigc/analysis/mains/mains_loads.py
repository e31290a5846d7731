"""SupplyTotals and SupplyIntakes -> what each supply takes from the mains: `mill5.takes-va`, `.at-230v`; `rig.takes-va` for all supplies."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.mains.own_intakes import OwnIntakes, used_there
from rigc.analysis.power.supply_intakes import ENERGY, SupplyIntake, SupplyIntakes
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.facts.mains import POWER_FACTOR, SHOWN_V
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Supply
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import at_place, ours, unstated
from rigc.traced.means import total, total_known
from rigc.traced.reason import ARITHMETIC
from rigc.traced.shown import Shown
from rigc.traced.term import Traced
from rigc.traced.units import AMPERES, FINE_MILLIAMPS, VOLT_AMPERES, WATTS, WATTS_GIVEN, WATTS_TAKEN

_APPARENT = "physics: apparent power"
_ALL = "all supplies in use together; amps and desks are not counted"


class MainsLoad(Record):
    """One supply: what it gives, its efficiency in percent and its power factor; what it takes in W and VA, what stays
    inside as heat, and the current by mains voltage.

    `by_kind` names those of efficiency and power factor that are the usual ones of its kind, not stated.
    """

    given_w: Figure
    efficiency: Traced
    power_factor: Traced
    by_kind: tuple[str, ...]
    watts: AnyFigure
    volt_amperes: AnyFigure
    heat: AnyFigure
    milliamps: dict[int, AnyFigure]


class MainsLoads(Record):
    """All supplies in use that take mains, in order of declaration, and their sums; by scenario what they take in VA (`places`) and, at its
    lowest voltage, in A (`amperes`). `own` is what amps and all else with a mains lead of its own say that they take, in VA; `places_with_own`
    and `amperes_with_own` are the sums of both by scenario, empty where none says it; `strips` is what both take of each mains strip, in VA, and
    `strip_amperes` in A by scenario and strip, of what is used there."""

    all: dict[str, MainsLoad]
    given_w: Figure
    watts: AnyFigure
    volt_amperes: AnyFigure
    heat: AnyFigure
    milliamps: dict[int, AnyFigure]
    places: dict[str, AnyFigure]
    amperes: dict[str, AnyFigure]
    own: OwnIntakes
    places_with_own: dict[str, AnyFigure]
    amperes_with_own: dict[str, AnyFigure]
    strips: dict[str, AnyFigure]
    strip_amperes: dict[tuple[str, str], AnyFigure]


def mains_loads(rig: Rig, totals: SupplyTotals, intakes: SupplyIntakes, own: OwnIntakes) -> MainsLoads:
    """S = P in / power factor; a supply that gives from its battery only is left out."""
    loads = {
        each.supply: _load(rig.supplies[each.supply], each, intakes.all[each.supply])
        for each in totals.all
        if rig.supplies[each.supply].takes_mains
    }
    every = loads.values()
    with_own = _with_own(rig, loads, own)
    volt_amperes = _sum("rig.takes-va", (each.volt_amperes for each in every), VOLT_AMPERES)
    return MainsLoads(
        loads,
        known_figure(
            "rig.gives", total_known(each.given_w for each in every), WATTS_GIVEN, rule=_ALL, source=ARITHMETIC
        ),
        _sum("rig.takes", (each.watts for each in every), WATTS_TAKEN),
        volt_amperes,
        _sum("rig.heat", (each.heat for each in every), WATTS),
        _currents("rig", volt_amperes),
        {
            name: figure(f"{name}.takes-va", volt_amperes, VOLT_AMPERES, rule=_ALL, source=_APPARENT)
            for name in rig.scenarios
        },
        {name: _in_scenario(scenario, volt_amperes) for name, scenario in rig.scenarios.items()},
        own,
        with_own,
        {name: _in_scenario(rig.scenarios[name], taken, "all-a") for name, taken in with_own.items()},
        {strip: _on_strip(rig, strip, loads, own) for strip in rig.mains_strips},
        {
            (name, strip): _strip_amperes(rig, scenario, strip, loads, own)
            for name, scenario in rig.scenarios.items()
            for strip in rig.mains_strips
        },
    )


def _with_own(rig: Rig, loads: dict[str, MainsLoad], own: OwnIntakes) -> dict[str, AnyFigure]:
    """By scenario: what the supplies take, and what else is used there and says what it takes."""
    if not own.all:
        return {}
    return {
        name: figure(
            f"{name}.all-va",
            total(
                [
                    *(load.volt_amperes for load in loads.values()),
                    *(own.all[each.name] for each in used_there(rig, scenario) if each.name in own.all),
                ]
            ),
            VOLT_AMPERES,
            rule="all supplies in use, and all else in use there that says what it takes",
            source=_APPARENT,
        )
        for name, scenario in rig.scenarios.items()
    }


def _sum(name: str, values: Iterable[Traced], shown: Shown) -> AnyFigure:
    """The sum for several supplies; lacking if one is."""
    return figure(
        name,
        total(values),
        shown,
        rule=_ALL,
        source=_APPARENT if shown is VOLT_AMPERES else ENERGY,
        label="all supplies",
    )


def used_behind(rig: Rig, strip: str, scenario: Scenario) -> tuple[str, ...]:
    """All that takes its mains from a strip and is used there."""
    there = {*rig.supplies, *(each.name for each in used_there(rig, scenario))}
    return tuple(name for name in rig.behind_strip(strip) if name in there)


def _strip_amperes(rig: Rig, scenario: Scenario, strip: str, loads: dict[str, MainsLoad], own: OwnIntakes) -> AnyFigure:
    taken = _taken(loads, own)
    return figure(
        f"{scenario.name}.{strip}.takes-a",
        total(taken[name] for name in used_behind(rig, strip, scenario) if name in taken) / _lowest(scenario),
        AMPERES,
        rule="what takes its mains from it there and says how much / the lowest voltage of the scenario",
        source=_APPARENT,
    )


def _taken(loads: dict[str, MainsLoad], own: OwnIntakes) -> dict[str, AnyFigure]:
    """What each takes, in VA."""
    return {**{name: load.volt_amperes for name, load in loads.items()}, **own.all}


def _on_strip(rig: Rig, strip: str, loads: dict[str, MainsLoad], own: OwnIntakes) -> AnyFigure:
    taken = _taken(loads, own)
    return figure(
        f"{strip}.takes-va",
        total(taken[name] for name in rig.behind_strip(strip) if name in taken),
        VOLT_AMPERES,
        rule="what is plugged into it, and into strips that hang on it, and says what it takes",
        source=_APPARENT,
    )


def _load(supply: Supply, given: SupplyTotal, intake: SupplyIntake) -> MainsLoad:
    name = supply.name
    by_kind = ["efficiency"] if intake.usual else []
    kind = supply.technology or ""
    factor: Traced = unstated(f"power factor of {name}")
    if supply.power_factor is not None:
        factor = at_place(f"power factor of {name}", supply.power_factor, supply.declared)
    elif kind in POWER_FACTOR:
        factor = ours(POWER_FACTOR[kind])
        by_kind.append("power factor")
    volt_amperes = figure(
        f"{name}.takes-va",
        intake.watts / factor,
        VOLT_AMPERES,
        rule="volt-amperes = W / power factor",
        source=_APPARENT,
        label=f"{name} takes",
    )
    return MainsLoad(
        given.drawn_w,
        intake.efficiency,
        factor,
        tuple(by_kind),
        intake.watts,
        volt_amperes,
        intake.heat,
        _currents(name, volt_amperes),
    )


def _currents(name: str, volt_amperes: AnyFigure) -> dict[int, AnyFigure]:
    return {
        volts: figure(
            f"{name}.at-{volts}v",
            volt_amperes / ours(fact) * 1000,
            FINE_MILLIAMPS,
            rule="current = volt-amperes / voltage",
            source=_APPARENT,
        )
        for volts, fact in SHOWN_V.items()
    }


def _lowest(scenario: Scenario) -> Traced:
    """The lowest voltage of a scenario's mains."""
    mains = scenario.mains
    if mains is None or not mains.low_v:
        return unstated(f"the mains of {scenario.name}")
    return at_place("mains", mains.low_v, mains.span, mains.typed)


def _in_scenario(scenario: Scenario, volt_amperes: AnyFigure, what: str = "takes-a") -> AnyFigure:
    return figure(
        f"{scenario.name}.{what}",
        volt_amperes / _lowest(scenario),
        AMPERES,
        rule="current = volt-amperes / the lowest voltage of the scenario",
        source=_APPARENT,
    )


COMPUTE = mains_loads
