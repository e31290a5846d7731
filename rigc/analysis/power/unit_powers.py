"""PowerAssignment -> what each unit needs and where it gets it: `hedge.volts`, `hedge.draws`, `.starts`, `.outlet`."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.outlet_fit import needs_outlet
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.unit_needs import draws, needs_volts, starts
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure
from rigc.traced.given import mentioned
from rigc.traced.reason import PRACTICE

_CHOICE = (
    "a stated feed stands; else an outlet of `others from` that fits in voltage, kind, polarity and plug, within the load "
    "limits, of its own rather than shared, the hardest unit first"
)

_UNFED = {
    "no word": "nothing in the source feeds it",
    "no outlets": "the supplies to choose from have no outlets",
    "unknown needs": "what it needs is not stated",
    "rivals": "too few outlets suit it and its rivals",
    "kept free": "an outlet that suits it is to be kept free",
    "ceiling": "the ceiling of a supply stands against it",
    "together": "each unit alone would find an outlet, all together do not",
    "undecided": "the search for an outlet ended undecided",
}


class UnitPower(Record):
    """What a unit says it needs, in V and mA, and the outlets that feed it.

    `starts` is its current at switch-on; None where it states none. `feed` is None, and `outlet` says `none`, where nothing
    feeds it.
    """

    unit: Unit
    feed: Supplied | None
    volts: AnyFigure
    draws: AnyFigure
    starts: AnyFigure | None
    outlet: Answer


class UnitPowers(Record):
    """Every unit that takes power from an outlet or should, in order of declaration."""

    all: tuple[UnitPower, ...]


def unit_powers(rig: Rig, power: PowerAssignment) -> UnitPowers:
    """What the source states of each unit, and what feeds it."""
    return UnitPowers(
        tuple(
            _power(rig, power, unit)
            for unit in used_units(rig)
            if needs_outlet(unit) or power.of(unit.name) is not None
        )
    )


def _power(rig: Rig, power: PowerAssignment, unit: Unit) -> UnitPower:
    feed = power.of(unit.name)
    return UnitPower(
        unit,
        feed,
        needs_volts(unit),
        draws(unit),
        None if unit.starts_ma is None else starts(unit),
        _unfed(power, unit) if feed is None else _fed(rig, power, unit, feed),
    )


def _fed(rig: Rig, power: PowerAssignment, unit: Unit, feed: Supplied) -> Answer:
    where = " and ".join(str(port) for port in feed.outlets)
    if feed.how:
        where += f" ({feed.how}{'' if feed.lower is None else f', {feed.lower} the lower'})"
    return Answer(
        f"{unit.name}.outlet",
        where,
        lambda: f"{unit.name} from {where}, {'as stated' if feed.stated else 'chosen'}",
        mentioned(
            "feed",
            "stated" if feed.stated else f"chosen from {', '.join(rig.power.others)}",
            feed.span if feed.stated else rig.power.others_span,
        ),
        *_stated_needs(unit),
        *(power.loads[port].volts for port in feed.outlets),
        rule=_CHOICE,
        source=PRACTICE,
    )


def _unfed(power: PowerAssignment, unit: Unit) -> Answer:
    why = next((_UNFED.get(each.why, each.why) for each in power.unfed if unit.name in each.units), "nothing feeds it")
    return Answer(
        f"{unit.name}.outlet",
        "none",
        why,
        mentioned(unit.name, "declared", unit.declared),
        *_stated_needs(unit),
        rule=_CHOICE,
        source=PRACTICE,
    )


def _stated_needs(unit: Unit) -> tuple[AnyFigure, ...]:
    needs = ((needs_volts, unit.volts), (draws, unit.draws_ma))
    return tuple(need(unit) for need, fact in needs if fact is not None)


COMPUTE = unit_powers
