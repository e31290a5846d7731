"""Stated loops -> the number of the loop that holds a unit: `marl.loop-of-signalbox`."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.wishes import LoopUse
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.reason import STATED
from rigc.traced.units import COUNT


class LoopNumbers(Record):
    """The numbers by the names of their figures, in the order of the source; of a unit in two loops of one switcher the first."""

    all: dict[str, Figure]


def loop_numbers(rig: Rig) -> LoopNumbers:
    """One for each unit and each switcher or amp of which a loop holds it."""
    numbers: dict[str, Figure] = {}
    for use in rig.loops:
        for stop in use.stops:
            name = f"{stop.thing}.loop-of-{use.switcher}"
            numbers.setdefault(name, _number(name, use))
    return LoopNumbers(numbers)


def _number(name: str, use: LoopUse) -> Figure:
    return known_figure(
        name,
        found(use.number, lambda: f"{use.number}, as stated"),
        COUNT,
        mentioned(f"what {use.switcher} holds", use.span.text, use.span),
        rule="a stated number stands",
        source=STATED,
    )


COMPUTE = loop_numbers
