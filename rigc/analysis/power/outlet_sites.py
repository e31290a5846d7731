"""Rig and stated taps -> the problem for the search: outlets to choose from, budgets, reservations."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import HARD, LoadLimits
from rigc.analysis.computations.outlet_fit import resized, reversing
from rigc.analysis.computations.outlet_options import Options
from rigc.analysis.computations.outlet_problem import Budget, OutletProblem, Site, drawn_ma
from rigc.analysis.computations.outlet_sharing import sharers
from rigc.analysis.computations.power_tap import Tap, tap
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Supply, Unit

RESERVE = "reserve: "  # in front of a reservation's text; no unit's name has a colon


def reservations(rig: Rig) -> tuple[Unit, ...]:
    """The outlets that the source reserves, as units that nobody shares with."""
    texts = [text or "a unit to come" for *_, text in rig.power.reserved]
    return tuple(
        Unit(
            "reserve",
            f"{RESERVE}{texts[at]}" + (f" ({texts[: at + 1].count(texts[at])})" if texts.count(texts[at]) > 1 else ""),
            text,
            volts.span,
            volts=volts,
            current=current,
            draws_ma=milliamps,
            starts_ma=Fact(milliamps.value, milliamps.typed, milliamps.span),
        )
        for at, (volts, current, milliamps, text) in enumerate(rig.power.reserved)
    )


def outlet_problem(rig: Rig, limits: LoadLimits, units: tuple[Unit, ...], stated: dict[str, Tap]) -> OutletProblem:
    """The problem of placing these units on the outlets of `others from` (of all supplies where only a reservation asks)."""
    names = tuple(dict.fromkeys(rig.power.others)) or tuple(rig.supplies)
    supplies = [rig.supplies[name] for name in names if units and name in rig.supplies]
    budgets = {each.name: budget for each in supplies if (budget := _budget(rig, each, stated)) is not None}
    spare: dict[str, int] = {}
    for count, supply, _ in rig.power.spare:
        spare[supply or ""] = spare.get(supply or "", 0) + count
    told_apart = {each.name for each in supplies if each.name in spare or _binds(each, budgets, limits)}
    sites = tuple(
        _site(rig, each.name, outlet, each.name in told_apart, stated) for each in supplies for outlet in each.outlets
    )
    sites = tuple(site for site in sites if site.taps)
    problem = OutletProblem(units, sites, sharers(rig), reversing(rig), resized(rig), budgets, spare)
    return problem.replace(units=_hardest_first(problem)) if sites else problem


def _hardest_first(problem: OutletProblem) -> tuple[Unit, ...]:
    options = Options(problem, HARD)
    return tuple(
        sorted(
            problem.units,
            key=lambda unit: (sum(options.room[look] for look in options.looks(unit)), -drawn_ma(unit)),
        )
    )


def _site(rig: Rig, supply: str, outlet: Outlet, told_apart: bool, stated: dict[str, Tap]) -> Site:
    port = Port(supply, outlet.name)
    taken = {name: each for name, each in stated.items() if port in each.outlets}
    taps = tuple(tap(rig, (port,), "", (rating,)) for rating in outlet.ratings)
    first = next(iter(taken.values()), None)
    common = f"{supply}/{outlet.common}" if outlet.common is not None else ""
    look = (
        *((each.volts, each.current, each.limit_ma) for each in taps),
        outlet.polarity,
        str(outlet.connector),
    )
    return Site(
        port,
        taps if first is None else (first,),
        look,
        (look, supply if told_apart else "", common),
        common,
        tuple(rig.units[name] for name in taken if name in rig.units),
        first is None or not first.how,
    )


def _budget(rig: Rig, supply: Supply, stated: dict[str, Tap]) -> Budget | None:
    ceiling = supply.ceiling_w or supply.ceiling_ma
    if ceiling is None:
        return None
    watts = supply.ceiling_w is not None
    taken = 0.0
    for name, each in stated.items():
        for port, setting in zip(each.outlets, each.settings, strict=True):
            if port.thing == supply.name and name in rig.units:
                share = len(each.outlets) if each.how == "parallel" else 1
                taken += drawn_ma(rig.units[name]) / share * (setting.volts.value / 1000 if watts else 1.0)
    return Budget(watts, ceiling.value, taken)


def _binds(supply: Supply, budgets: dict[str, Budget], limits: LoadLimits) -> bool:
    """Whether a supply's ceiling can matter at all: whether its outlets could together give more."""
    budget = budgets.get(supply.name)
    if budget is None:
        return False
    most = sum(
        max(each.milliamps.value * (each.volts.value / 1000 if budget.watts else 1.0) for each in outlet.ratings)
        for outlet in supply.outlets
        if outlet.ratings
    )
    return most * 100 > budget.ceiling * limits.total_pct
