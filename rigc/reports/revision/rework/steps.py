"""Rework -> the steps at the bench, to be ticked off, and the time that they take."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from rigc.analysis.deck.zones import Zones
from rigc.analysis.revision.plan.bench_phases import BEFORE
from rigc.analysis.revision.plan.bench_steps import minutes
from rigc.analysis.revision.plan.plan_records import Step
from rigc.analysis.revision.rework import Rework
from rigc.facts.fastening import WAIT_H
from rigc.facts.readings import CLOSED_ROOM_H
from rigc.facts.rework import EARLY_HOLD_MIN
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.deck.zone_column import ZONE
from rigc.reports.revision.rework.words import CHANGE, change_cell, ends_of, first_cell, from_to, listed, tidy

_COLUMNS = (Column("step"), ZONE, Column("min", number=True), CHANGE)


def times(rework: Rework) -> str:
    """The minutes that are left, beforehand and on the board, in one line."""
    left = minutes(rework.steps, False)
    early = minutes(rework.steps, True)
    return f"On the board {_round(left)} min; beforehand {_round(early)} min."


def waits(rework: Rework) -> str:
    """What is waiting, not work."""
    parts = []
    if any(step.action in ("strip base", "strip deck") for step in rework.steps):
        early = f"({EARLY_HOLD_MIN.value:g} min for about half)"
        parts.append(f"Fresh strip waits {WAIT_H.value:g} h before full load {early}: lay it first.")
    if any(test.test == 19 for test in rework.retests):
        parts.append(f"Soak {CLOSED_ROOM_H.value:g} h at the end.")
    return " ".join(parts)


POWER_OFF = Paragraph(
    "power-off",
    (
        "Power off and the mains lead out before anything is unplugged. No DC plug goes into a unit before it is "
        "measured.",
    ),
    kind="caution",
    heading="mains out",
)
"""The caution at the head of the steps."""
MAINS_PART = "An inlet is a mains part: a competent person sets it, and tests earth and insulation before the mains lead goes in."
"""What is said besides where an inlet is set or moved."""


def steps_table(rework: Rework, old: Zones, new: Zones) -> Table:
    """The steps on the board, in bench order; what is made beforehand stands with the parts to bring.

    Zones are those of the board that is there (`old`) for what comes off, else of the new design."""
    rows = tuple(_row(step, old, new) for step in rework.steps if step.phase != BEFORE)
    return tidy(Table("steps", "Steps, in this order", _COLUMNS, rows, empty="nothing to do by hand", tick=True))


def _row(step: Step, old: Zones, new: Zones) -> Row:
    minutes = "½" if step.minutes == 0.5 else _round(step.minutes)
    return Row(
        (first_cell(_SAID[step.action](step), step), Cell(_zone(step, old, new)), Cell(minutes), change_cell(step))
    )


def _zone(step: Step, old: Zones, new: Zones) -> str:
    """Where on the board the step is done, once each; empty of what is done all over it, or beside it."""
    of, where = _WHERE.get(step.action, _NOWHERE)
    board = old if of == "old" else new
    names = [name.partition(" ")[0] for name in where(step)]
    if step.action != "fit":
        return board.all(names)
    return " → ".join(dict.fromkeys(filter(None, map(board.named, names))))


def _round(value: float) -> str:
    return f"{int(value + 0.5)}"


def _from_to(verb: str) -> Callable[[Step], str]:
    return lambda step: f"{verb} {listed(step.what)}: {from_to(step.start, step.end)}"


def _points(step: Step) -> list[str]:
    return [name.partition(" at ")[2] for name in step.what]


def _tests(step: Step) -> str:
    numbers = list(dict.fromkeys(name.partition(" at ")[0] for name in step.what))
    return f"test{'s' * (len(numbers) > 1)} {' and '.join(numbers)}"


_NOWHERE: tuple[str, Callable[[Step], Iterable[str]]] = ("new", lambda _: ())
_WHERE: dict[str, tuple[str, Callable[[Step], Iterable[str]]]] = {
    "unplug": ("old", lambda step: step.start.split(" + ")),
    "take off": ("old", lambda step: step.what),
    "peel": ("old", lambda step: step.what),
    "take out": ("old", lambda step: step.what),
    "set volts": ("new", lambda step: step.what),
    "set selector": ("new", lambda step: step.what),
    "set lift": ("new", lambda step: step.what),
    "set jack": ("new", lambda step: step.what),
    "strip deck": ("new", lambda step: step.what),
    "refit plug": ("new", lambda step: (step.start,)),
    "fit": ("new", lambda step: (step.start, step.end)),
    "plug in": ("new", lambda step: step.end.split(" + ")),
    "measure": ("new", _points),
    "mains test": ("new", _points),
    "drill for it": ("new", lambda step: step.what),
    "mount": ("new", lambda step: step.what),
}
_SAID: dict[str, Callable[[Step], str]] = {
    "power off": lambda _: "power off, mains lead out; photograph both sides",
    "unplug": lambda step: f"unplug {listed(step.what)} at {step.start}",
    "pull out": lambda step: f"pull out {listed(step.what)}{f', into {step.end}' if step.end else ''}",
    "take off": lambda step: f"take off {listed(step.what)}{f', {step.start}' if step.start else ''}",
    "peel base": lambda step: f"peel the strip off the base of {listed(step.what)}",
    "strip base": lambda step: f"lay strip under the base of {listed(step.what)}",
    "peel": lambda step: f"peel the strip of {listed(step.what)} off the deck",
    "set volts": lambda step: f"set {listed(step.what)}: {from_to(step.start, step.end)}; tape its switch",
    "set lift": lambda step: f"ground lift of {listed(step.what)}: {from_to(step.start, step.end)}; tape it",
    "clear deck": lambda step: f"free and tag all leads on deck {listed(step.what)}; it is kept for the way back",
    "put deck": _from_to("deck"),
    "set selector": lambda step: f"selector of {listed(step.what)}: {from_to(step.start, step.end)}; tape it",
    "drill": lambda step: f"drill {listed(step.what)}: at {step.end}",
    "widen": lambda step: f"cut {listed(step.what)}: at {step.end}; it runs into what is cut at {step.start}",
    "drill for it": lambda step: f"mark from {listed(step.what)} the holes that hold it, and drill them: {step.end}",
    "set jack": lambda step: f"drill for {listed(step.what)} and set it: {step.end}",
    "take out": lambda step: f"take out {listed(step.what)}: {step.start}{step.end}",
    "close": lambda step: f"close the hole of {listed(step.what)}: at {step.start}",
    "case": lambda step: f"try the board in case {listed(step.what)}, lid shut: {from_to(step.start, step.end)} mm",
    "strip deck": lambda step: f"lay strip on the deck for {listed(step.what)}",
    "refit plug": lambda step: f"{listed(step.what)} for {step.start}: cut off the plug{step.end}",
    "fit": _from_to("lay"),
    "plug in": lambda step: f"plug {listed(step.what)} into {step.end}",
    "mains test": lambda step: (
        f"a competent person makes {_tests(step)}: {listed(list(dict.fromkeys(_points(step))))}; until it has passed the mains lead stays out"
    ),
    "measure": lambda step: f"mains in; test 5 at the free plug: {listed(_points(step))}; mains out",
    "mount": lambda step: f"set down {listed(step.what)}{f': {from_to(step.start, step.end)}' if step.end else ''}",
    "label": lambda step: f"change the labels of {ends_of(step.what)}",
    "dress": lambda step: f"lay {listed(step.what)} the new way and tie",
    "clear": lambda step: f"clear {listed(step.what)}",
    "enter": lambda step: f"enter {listed(step.what)}{f': {from_to(step.start, step.end)}' if step.end else ''}",
    "pack": lambda step: f"spares carried, {listed(step.what)}: {step.start} → {step.end}",
    "test": lambda step: f"test again, {len(step.what)} reading{'s' * (len(step.what) != 1)} (below)",
    "bag": lambda _: "bag what came off, mark the bag",
}
