"""A positive-ground unit shares an outlet, or outlets with one common, with another unit.

Why it matters: the audio leads join the grounds of all units. Where one unit's ground is the + pole and another's the
− pole, the shield between them shorts the supply.
What to do: give the positive-ground unit an isolated outlet of its own.
Source: physics: both poles of one supply joined by a shield. What else it comes to there (wrong-voltage, mixed-outlet) is not told as well.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.series_midpoint import shared
from rigc.analysis.leads.leads import Leads
from rigc.analysis.power.companies import companies
from rigc.analysis.power.mends.other_feeds import moves
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "shared-positive-ground",
    Level.ERROR,
    __doc__,
    "a positive-ground unit has an isolated outlet of its own",
    "physics: both poles of one supply joined by the audio shields",
)


def shared_positive_ground(rig: Rig, power: PowerAssignment, leads: Leads, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each positive-ground unit in company; can't-check for each unit in company of unknown ground."""
    for ports, units in companies(rig, power):
        positive = [unit for unit in units if unit.ground is not None and unit.ground.value == "positive"]
        for unit in positive:
            if unit is positive[0] or len(units) > len(positive):
                yield _told(rig, power, leads, limits, unit, [each for each in units if each is not unit], ports)
        for unit in units:
            if not positive and unit.ground is None:
                others = listed(each.name for each in units if each is not unit)
                yield KIND.cant_check(
                    unit.declared,
                    f"'{unit.name}' shares {_and(ports)} with {others} and does not say which pole is its ground",
                    subject=(unit.name,),
                    help=f"measure it and write `ground negative`, `ground positive` or `ground isolated` in '{unit.name}'",
                    asks_for=(f"'{unit.name}' does not say which pole is its ground",),
                )


def _told(
    rig: Rig,
    power: PowerAssignment,
    leads: Leads,
    limits: LoadLimits,
    unit: Unit,
    others: list[Unit],
    ports: tuple[Port, ...],
) -> Diagnostic:
    feed = power.of(unit.name)
    volts = power.loads[ports[0]].volts
    poles = ", ".join(f"that of '{each.name}' {_pole(each)}" for each in others)
    where = f"on {_and(ports)}" if len(ports) == 1 else f"on the one common of {_and(ports)}"
    return KIND.at(
        unit.declared if feed is None else feed.span,
        f"the audio ground of '{unit.name}' is its + pole, {poles}; {where} {_short(leads, unit, others, volts)}",
        subject=(unit.name, *(each.name for each in others), *(str(port) for port in ports)),
        label="both poles meet here" if _negative(others) else "not alone here",
        also=tuple(Label(each.ground.span, f"ground {each.ground.value}") for each in (unit, *others) if each.ground),
        mends=moves(rig, power, unit.name, limits, lambda way: all(shared(rig, port) is None for port in way.outlets)),
        otherwise=f"no move or exchange does it: add a supply that gives '{unit.name}' an isolated outlet of its own",
    )


def _short(leads: Leads, unit: Unit, others: list[Unit], volts: float) -> str:
    """What comes of it: with one of negative ground a short, with one that does not say perhaps; with none of them it is bad practice."""
    if negative := _negative(others):
        return f"{_shield(leads, unit, negative)} shorts {volts:g} V"
    unsaid = [each for each in others if each.ground is None]
    if unsaid:
        return f"{_shield(leads, unit, unsaid)} may short {volts:g} V"
    return "no positive-ground unit may share"


def _negative(units: list[Unit]) -> list[Unit]:
    return [each for each in units if each.ground is not None and each.ground.value == "negative"]


def _shield(leads: Leads, unit: Unit, others: list[Unit]) -> str:
    names = {each.name for each in others}
    for lead in leads.all:
        ends = {lead.start.thing, lead.end.thing}
        if lead.signal == "audio" and unit.name in ends and ends & names:
            return f"the shield of {lead.mark}"
    return "the shield between them"


def _pole(unit: Unit) -> str:
    if unit.ground is None:
        return "is not stated"
    return {"negative": "is its − pole", "positive": "is its + pole too"}.get(unit.ground.value, "is neither pole")


def _and(ports: tuple[Port, ...]) -> str:
    return " and ".join(str(port) for port in ports)


CHECK = shared_positive_ground
