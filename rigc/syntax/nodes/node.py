"""Node: a piece of a `.rig` file as written; the leaves that all statements are made of; how a node prints itself."""

from __future__ import annotations

import re
from typing import Any, ClassVar

from rigc.record import Record
from rigc.source import Span


class Node(Record):
    """One grammar rule's piece of text. Fields stand in the order in which the rule names them, the span last.

    `FORM` is how it is written: `{field}` is a field, `[...]` is left out when its field is absent. A tuple of
    statements prints as a block, `{field|sep}` joins a tuple with `sep`. Printing and parsing again gives an equal node.
    """

    FORM: ClassVar[str] = ""

    def __str__(self) -> str:
        return _filled(self.FORM, self)


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


_PART = re.compile(r"\[[^\]]*\]|\{(\w+)(?:\|([^}]*))?\}")


def _filled(form: str, node: Node) -> str:
    def part(found: re.Match[str]) -> str:
        if found.group(1) is None:
            return _optional(found.group(0)[1:-1], node)
        return _value(getattr(node, found.group(1)), found.group(2))

    return _PART.sub(part, form)


def _optional(form: str, node: Node) -> str:
    values = [getattr(node, found.group(1)) for found in _PART.finditer(form)]
    return "" if all(value is None or value == () for value in values) else _filled(form, node)


def _value(value: Any, separator: str | None) -> str:
    if not isinstance(value, tuple):
        return str(value)
    if separator is not None:
        return separator.join(map(str, value))
    lines = [line for item in value for line in str(item).split("\n")]
    return "{\n" + "".join(f"  {line}\n" for line in lines) + "}"
