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


class Spread(Record):
    """`+- 10 %` behind a number: how far the thing may be off it, either way; without a unit it is in that of the number."""

    number: Word
    unit: Word | None
    span: Span

    def __str__(self) -> str:
        return f"+- {_with_unit(self.number, self.unit)}"


class UpTo(Record):
    """`to 60 mA` of `from 40 to 60 mA`: the greater end of a range."""

    number: Word
    unit: Word | None
    span: Span

    def __str__(self) -> str:
        return f"to {_with_unit(self.number, self.unit)}"


class Amount(Record):
    """A number and its unit as typed, with what it may be off by; the unit is None where a later number of the statement bears it.

    With an `UpTo` it is a range, and `number` its least.
    """

    number: Word
    unit: Word | None
    spread: Spread | UpTo | None
    span: Span

    @property
    def own_unit(self) -> Word | None:
        """The unit that stands in it: behind its number, or behind the number of its spread where that is no percentage."""
        if self.unit is not None or self.spread is None:
            return self.unit
        unit = self.spread.unit
        return None if unit is None or unit.text == "%" else unit

    def __str__(self) -> str:
        said = _with_unit(self.number, self.unit)
        if self.spread is None:
            return said
        return f"from {said} {self.spread}" if isinstance(self.spread, UpTo) else f"{said} {self.spread}"


def _with_unit(number: Word, unit: Word | None) -> str:
    return number.text if unit is None else f"{number.text} {unit.text}"
