"""Tests blocks -> expected readings, readings taken, and upkeep; a reading is in a unit that its test is read in."""

from __future__ import annotations

from rigc.facts.tests import TESTS
from rigc.model.fact import Fact, Quantity
from rigc.model.jacks import Port
from rigc.model.records import Expected, Reading
from rigc.model.resolve.context import Context
from rigc.model.resolve.ports import Ports
from rigc.model.resolve.wishes.leads import known_mark
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import (
    READ_CURRENT,
    READ_GAIN,
    READ_LEVEL,
    READ_OHM,
    READ_PERCENT,
    READ_TIME,
    READ_VOLTAGE,
    TEMPERATURE,
    Measure,
)
from rigc.model.units.quantities import PLAIN, factor
from rigc.model.units.spreads import without_spread
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

MEASURES = (READ_VOLTAGE, READ_OHM, READ_GAIN, READ_LEVEL, READ_TIME, TEMPERATURE, READ_CURRENT, READ_PERCENT)
_READ_PLAIN = READ_PERCENT.replace(name="a reading")
Told = tuple[tuple[Expected, ...], tuple[Reading, ...], tuple[tuple[int, str], ...]]


def tests(context: Context, ports: Ports, marks: dict[str, Word]) -> Told:
    """Expected readings, readings taken, and upkeep as (every so many shows, what); `marks` are the stated leads."""
    expected: list[Expected] = []
    readings: list[Reading] = []
    upkeep: list[tuple[int, str]] = []
    for node in (node for block in context.of(nodes.TestsBlock) for node in block.items):
        if isinstance(node, nodes.Every):
            shows = context.count(node.number, "number of shows", 1, 9999)
            if shows is not None:
                upkeep.append((shows, node.task.value))
        elif isinstance(node, nodes.Expected | nodes.Reading):
            number, point = context.count(node.number, "test number", 1, 99), _point(context, ports, node.point, marks)
            read = None if number is None else _read(context, node.amount, number)
            if number is None or point is None or read is None:
                continue
            if isinstance(node, nodes.Expected):
                expected.append(Expected(number, point, *read, node.span))
            else:
                readings.append(Reading(node.date.text, number, point, *read, node.who.value, node.span))
    return tuple(expected), tuple(readings), tuple(upkeep)


def _point(context: Context, ports: Ports, at: nodes.Endpoint | nodes.LeadMark, marks: dict[str, Word]) -> str | None:
    """A thing, its jack or outlet, a lead's number, or the rig itself."""
    if isinstance(at, nodes.LeadMark):
        return at.mark.text if known_mark(context, at.mark, marks) else None
    if at.jack is None and at.thing.text in {rig.name.text for rig in context.of(nodes.Rig)}:
        return at.thing.text
    thing = ports.thing(at.thing, "a thing of this rig, or a lead's number")
    if thing is None:
        return None
    outlets = [outlet.name for outlet in getattr(thing, "outlets", ())]
    if at.jack is None or at.jack.text in outlets:
        return str(at)
    return str(Port(thing.name, at.jack.text)) if ports.jack(thing, at.jack) else None


def _read(context: Context, amount: nodes.Amount, number: int) -> tuple[Quantity, str] | None:
    """The reading and its unit; None after a finding. A test that is not among the usual ones may be read in any unit."""
    test = TESTS.get(number)
    if test is not None and test.units == ("",):
        return _plain(context, amount, test.name)
    wanted = [measure for measure in MEASURES if test is None or not test.units or measure.unit in test.units]
    measure = next((measure for measure in wanted if _fits(amount, measure)), wanted[0])
    fact = context.chosen(amount, measure)
    return None if fact is None else (fact, measure.unit)


def _plain(context: Context, amount: nodes.Amount, name: str) -> tuple[Quantity, str] | None:
    amount = without_spread(amount, _READ_PLAIN, context.report)
    if amount.unit is None:
        return Fact(float(amount.number.text), amount.number.text, amount.span), ""
    context.report(
        WRONG_QUANTITY.at(
            amount.unit.span,
            f"'{amount}' bears a unit; the test '{name}' is read as a plain number",
            label="no unit goes here",
            help=f"write {amount.number.text}",
        )
    )
    return None


def _fits(amount: nodes.Amount, measure: Measure) -> bool:
    unit = amount.own_unit.text if amount.own_unit else ""
    if PLAIN.get(unit) == measure.unit:
        return True
    try:
        return bool(unit) and factor(unit, measure.unit) is not None
    except LookupError:
        return False
