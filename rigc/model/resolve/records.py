"""Tests, spares, as-built facts, field notes and accepted findings, as stated."""

from __future__ import annotations

from typing import Any

from rigc.model.jacks import Port
from rigc.model.measures import CURRENT, DURATION, GAIN, IMPEDANCE, LENGTH, LEVEL, PERCENT, VOLTAGE
from rigc.model.quantities import factor
from rigc.model.records import Accept, AsBuilt, BuiltLead, Expected, FieldNote, Reading, Spare
from rigc.model.resolve.context import Context
from rigc.model.resolve.leads import known_mark
from rigc.model.resolve.ports import Ports
from rigc.model.scope import UNCLEAR, UNKNOWN, twice
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

UNITS = ("unit", "amp", "desk")


def tests(
    context: Context, ports: Ports
) -> tuple[tuple[Expected, ...], tuple[Reading, ...], tuple[tuple[int, str], ...]]:
    """Expected readings, readings taken, and upkeep as (every so many shows, what)."""
    expected: list[Expected] = []
    readings: list[Reading] = []
    upkeep: list[tuple[int, str]] = []
    for block in context.of(nodes.TestsBlock):
        for node in block.items:
            if isinstance(node, nodes.Every):
                number = context.count(node.number, "number of shows", 1, 9999)
                if number is not None:
                    upkeep.append((number, node.task.value))
            elif isinstance(node, nodes.Expected | nodes.Reading):
                test = context.count(node.number, "test number", 1, 99)
                point, amount = _point(ports, node.point), _reading(context, node.amount)
                if test is None or point is None or amount is None:
                    continue
                if isinstance(node, nodes.Expected):
                    expected.append(Expected(test, point, amount, node.span))
                else:
                    readings.append(Reading(node.date.text, test, point, amount, node.who.value, node.span))
    return tuple(expected), tuple(readings), tuple(upkeep)


def _point(ports: Ports, end: nodes.Endpoint) -> str | None:
    thing = ports.thing(end.thing, "a thing of this rig")
    if thing is None:
        return None
    outlets = [outlet.name for outlet in getattr(thing, "outlets", ())]
    if end.jack is None or end.jack.text in outlets:
        return str(end)
    return str(Port(thing.name, end.jack.text)) if ports.jack(thing, end.jack) else None


def _reading(context: Context, amount: nodes.Amount) -> Any:
    unit = amount.unit.text if amount.unit else "V"
    try:
        measure = CURRENT if factor(unit, "mA") is not None else VOLTAGE
        if factor(unit, "V") is None and factor(unit, "mA") is None:
            return _other_reading(context, amount)
    except LookupError:
        measure = VOLTAGE
    return context.amount(amount, measure)


def _other_reading(context: Context, amount: nodes.Amount) -> Any:
    unit = amount.unit.text if amount.unit else ""
    for measure in (IMPEDANCE, DURATION, GAIN, LEVEL, PERCENT):
        if unit == measure.unit or (measure.unit not in ("dB", "dBu", "%") and factor(unit, measure.unit) is not None):
            return context.amount(amount, measure)
    return context.amount(amount, VOLTAGE)


def spares(context: Context) -> tuple[Spare, ...]:
    """Spares carried."""
    found = []
    for block in context.of(nodes.SparesBlock):
        for node in block.items:
            if not isinstance(node, nodes.SpareLead | nodes.SparePlug | nodes.SpareThing):
                continue
            count = context.count(node.number, "number of spares", 1, 999)
            bag = node.bag.value if node.bag else ""
            length = context.amount(node.length, LENGTH) if isinstance(node, nodes.SpareLead) else None
            if isinstance(node, nodes.SpareLead):
                what = f"{node.signal} lead"
            elif isinstance(node, nodes.SparePlug):
                what = f"plug {context.scopes['plug'].find(node.plug, (), 'a plug kind') or ''}".strip()
            else:
                what = node.what.value
            if count is not None:
                found.append(Spare(count, what, length, bag, node.span))
    return tuple(found)


def as_built(context: Context, marks: dict[str, Word], changes: tuple[int, ...]) -> tuple[AsBuilt, ...]:
    """What differs on the built board."""
    found = []
    for block in context.of(nodes.AsBuilt):
        leads: list[BuiltLead] = []
        swaps: list[Any] = []
        done: list[int] = []
        for node in block.items:
            if isinstance(node, nodes.BuiltLead):
                length = context.amount(node.length, LENGTH)
                plugs = (node.plugs.first.text, node.plugs.second.text) if node.plugs else None
                if known_mark(context, node.mark, marks) and length is not None:
                    date, by = node.date.text if node.date else "", node.who.value if node.who else ""
                    leads.append(BuiltLead(node.mark.text, length, plugs, date, by, node.span))
            elif isinstance(node, nodes.Swap):
                note = context.count(node.note, "field note number", 1, 9999) if node.note else None
                out = context.scopes["thing"].find(node.out, UNITS, "a unit")
                into = context.scopes["thing"].find(node.into, UNITS, "a unit")
                if out is not None and into is not None:
                    swaps.append((out, into, note))
            elif isinstance(node, nodes.Done):
                done += [number for word in node.changes if (number := _change(context, word, changes)) is not None]
        found.append(AsBuilt(block.letter.text, tuple(leads), tuple(swaps), tuple(done), block.span))
    return tuple(found)


def _change(context: Context, word: Word, changes: tuple[int, ...]) -> int | None:
    number = context.count(word, "change number", 1, 9999)
    if number is None or number in changes:
        return number
    context.report(
        UNKNOWN.at(
            word.span,
            f"the rig block states no change {number}",
            label=f"stated are {', '.join(map(str, changes)) or 'none'}",
            help=f"state it in the rig block: change {number} design TEXT",
        )
    )
    return None


def field_notes(context: Context) -> tuple[FieldNote, ...]:
    """Field notes in order."""
    found: dict[int, FieldNote] = {}
    for node in context.of(nodes.FieldNote):
        number = context.count(node.number, "field note number", 1, 9999)
        if number is None:
            continue
        if number in found:
            context.report(
                twice(
                    f"field note {number}", node.number, Word("", found[number].span), "give one of them another number"
                )
            )
        folded = node.state is not None and node.state.text == "folded"
        by = node.who.value if node.who else ""
        found[number] = FieldNote(number, node.date.text, node.text.value, by, folded, node.span)
    return tuple(found.values())


def accepts(context: Context) -> tuple[Accept, ...]:
    """Accepted findings; what they are about, a thing, a lead or the rig itself, must exist."""
    found = []
    rigs = {node.name.text for node in context.of(nodes.Rig)}
    for node in context.of(nodes.Accept):
        target: str | None = None
        if isinstance(node.target, nodes.LeadMark):
            target = node.target.mark.text
        elif node.target is not None:
            target = str(node.target)
            name = node.target.thing
            families = [scope for scope in context.scopes.values() if name.text in scope.declared]
            if not families and name.text not in rigs:
                context.scopes["thing"].find(name, (), "what the finding is about")
                continue
        if not node.reason.value.strip() or not node.who.value.strip():
            context.report(
                UNCLEAR.at(
                    node.span,
                    f"{node.rule} is accepted without a reason or a name",
                    label="empty",
                    help="write why it may stay, and who says so",
                )
            )
            continue
        found.append(
            Accept(node.rule.text, target, node.reason.value, node.who.value, node.date.text, node.span, node.rule.span)
        )
    return tuple(found)
