"""Node: a piece of a `.rig` file as written; the leaves that all statements are made of."""

from __future__ import annotations

from rigc.record import Record
from rigc.source import Span
from rigc.syntax.nodes.written import written


class Node(Record):
    """One grammar rule's piece of text: its class bears the rule's name (`FootSwitch` is `foot_switch`), its fields stand in the order
    in which the rule names them, the span last. Printing it as its rule has it and parsing again gives an equal node.
    """

    span: Span

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        cls.FIELDS = (*(name for name in cls.FIELDS if name != "span"), "span")

    def __str__(self) -> str:
        return written(self)


class Word(Record):
    """A name, mark, date, plain number or reserved word (several words joined by a space), as typed."""

    text: str
    span: Span

    def __str__(self) -> str:
        return self.text


class Text(Record):
    """A quoted text; `value` is without quotes and with escapes undone."""

    value: str
    span: Span

    def __str__(self) -> str:
        escaped = self.value.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
        return f'"{escaped}"'


class Amount(Record):
    """A number and its unit as typed; the unit is None where a later number of the statement bears it."""

    number: Word
    unit: Word | None
    span: Span

    def __str__(self) -> str:
        return self.number.text if self.unit is None else f"{self.number.text} {self.unit.text}"
