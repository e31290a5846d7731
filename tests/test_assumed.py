"""A figure is marked as assumed just where an assumed fact is behind it: where another value of the fact makes another figure.

Each fact of a rig is first said to be assumed, its value kept, and the figures are seen that gain the mark. Then its value is
changed, a little and much, and the figures are seen that change. What changes with a little must bear the mark; what bears it
must change with a little or with much. Where that is not so, the figure is named below.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest
from cases import READER, ROOT, results_if_sound
from reach_changes import BLOCKS, span_of

from rigc.analysis.reasoning import told
from rigc.files.disk import Disk
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.nodes import Amount, Node
from rigc.syntax.nodes.written import rule_of
from rigc.traced.figure import assumed

RIG = ROOT / "tests/assumed/board.rig"
LITTLE, MUCH = (1.04, 0.96), (1.6, 0.6, 9.0, 0.1)
PARTS = 6

KINDS = ("barrel",)
"""Numbers that name a kind and measure nothing: another barrel is another plug."""

NOT_KEPT = ("drop",)
"""Statements of which the model keeps no word on how they are known: where a deck's drop lines lie."""

NOT_SEEN = {
    "at-100hz": "so low, controls and cable take so little that two decimals rarely show it",
    "plain-100hz": "as at 100 Hz",
    "return": "what comes back through which return is solved for the whole network, all of which is behind it",
    "outlet": "a choice, which stays until a limit is passed",
    "premade": "the next length that there is",
    "slack": "a share of the route, or the least slack, whichever is more",
    "a": "the drop line that is nearest",
    "b": "the drop line that is nearest",
    "area": "of a ring whose leads go through the deck at the drop line that is nearest",
    "hum": "follows the area",
    "level": "follows the area",
    "lowest": "the lowest level of several states",
    "brighter": "a difference that a decimal may hide",
}
"""Figures, by the end of their names, that rest on facts whose change they need not show, and why."""

Figures = dict[str, tuple[str, bool]]
"""The text of each figure and whether it is marked, by its name."""


class Stated(Record):
    """A fact of a block: the statement that makes it, its numbers, and the text in which it is assumed."""

    rule: str
    span: Span
    numbers: tuple[Span, ...]
    assumed: str

    def __str__(self) -> str:
        return f"{self.span.line} {self.rule}"


def figures_of(text: str) -> Figures:
    """Every figure of a text; none where it is no rig."""
    disk = Disk(RIG, root=ROOT, given=text.encode())
    results = results_if_sound(disk, disk.name, effort=0, advice=False)
    if results is None:
        return {}
    return {
        name: (each.text, assumed(each)) for name, each in told(results).items() if ".label." not in name
    }  # a label names things, whatever a fact is


def walk(value: Any) -> Iterator[Amount]:
    if isinstance(value, Amount):
        yield value
    elif isinstance(value, Node) and rule_of(type(value)) not in KINDS:
        for field in value.FIELDS:
            yield from walk(getattr(value, field))
    elif isinstance(value, tuple):
        for each in value:
            yield from walk(each)


@cache
def facts() -> tuple[Stated, ...]:
    """The facts of the rig that have numbers and can be assumed, in the order of the source."""
    source = Source(RIG.name, RIG.read_text("utf-8"))
    found = []
    for block in READER.parse(source).file.statements:
        if rule_of(type(block)) not in BLOCKS:
            continue
        for node in (each for field in block.FIELDS for each in _tuple(getattr(block, field))):
            numbers = tuple(amount.number.span for amount in walk(node))
            if numbers and isinstance(node, Node) and rule_of(type(node)) not in NOT_KEPT:
                span = span_of(node)
                text = f"{source.text[: span.end]} assumed{source.text[span.end :]}"
                found.append(Stated(rule_of(type(node)), span, numbers, text))
    return tuple(found)


def _tuple(value: Any) -> tuple[Any, ...]:
    return value if isinstance(value, tuple) else ()


@cache
def before() -> Figures:
    return figures_of(RIG.read_text("utf-8"))


def changed(fact: Stated, factors: tuple[float, ...], awaited: set[str]) -> set[str]:
    """The figures that change when one of a fact's numbers is multiplied; by no further factor once all that are awaited do."""
    text, found = fact.span.source.text, set[str]()
    for at, factor in enumerate(factors):
        if at and awaited <= found:
            break
        for span in fact.numbers:
            now = figures_of(f"{text[: span.start]}{float(span.text) * factor:.6g}{text[span.end :]}")
            found |= {name for name, (shown, _) in now.items() if name in before() and before()[name][0] != shown}
    return found


def faults(fact: Stated) -> Iterator[str]:
    """The figures whose mark is not as it should be where only this fact is assumed."""
    now = figures_of(fact.assumed)
    if not now:  # the language takes no provenance there
        return
    marked = {name for name, (_, mark) in now.items() if mark}
    seen = {name for name in marked if name.rpartition(".")[2] not in NOT_SEEN}
    changing = changed(fact, LITTLE, seen)
    yield from (f"{fact}: {name} is not marked" for name in sorted(changing - marked))
    if still := seen - changing:
        yield from (f"{fact}: {name} is marked" for name in sorted(still - changed(fact, MUCH, still)))


@pytest.mark.parametrize("part", range(PARTS))
def test_just_what_rests_on_an_assumed_fact_is_marked(part: int) -> None:
    """Each fact of the rig, in parts that run side by side."""
    assert [fault for fact in facts()[part::PARTS] for fault in faults(fact)] == []


def test_nothing_is_marked_where_nothing_is_assumed() -> None:
    assert [name for name, (_, mark) in before().items() if mark] == []


def test_a_load_does_not_rest_on_a_capacitor() -> None:
    """One assumed capacitance marks what it makes, and nothing else of its section."""
    text = RIG.read_text("utf-8").replace("capacitance 120 pF", "capacitance 120 pF assumed")
    now = {name: mark for name, (_, mark) in figures_of(text).items()}
    parts = ("length", "cable", "total", "load", "resonance", "peak")
    assert [now[f"guitar.out.loading.{part}"] for part in parts] == [False, False, True, False, True, True]
