"""Tests, spares, as-built facts, field notes, and findings that are accepted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.leads import Plugs
    from rigc.syntax.nodes.signal import Endpoint


class TestsBlock(Node):
    """`tests {items}`"""

    FORM = "tests {items}"
    items: tuple[Node, ...]
    span: Span


class Expected(Node):
    """`test {number} at {point} expects {amount}`"""

    FORM = "test {number} at {point} expects {amount}"
    number: Word
    point: Endpoint | LeadMark
    amount: Amount
    span: Span


class Reading(Node):
    """`{date} test {number} at {point} reads {amount} by {who}`"""

    FORM = "{date} test {number} at {point} reads {amount} by {who}"
    date: Word
    number: Word
    point: Endpoint | LeadMark
    amount: Amount
    who: Text
    span: Span


class Every(Node):
    """`every {number} shows {task}`"""

    FORM = "every {number} shows {task}"
    number: Word
    task: Text
    span: Span


class SparesBlock(Node):
    """`spares {items}`"""

    FORM = "spares {items}"
    items: tuple[Node, ...]
    span: Span


class SpareLead(Node):
    """`{number} {signal} lead {length}[ in {bag}]`"""

    FORM = "{number} {signal} lead {length}[ in {bag}]"
    number: Word
    signal: Word
    length: Amount
    bag: Text | None
    span: Span


class SparePlug(Node):
    """`{number} plug {plug}[ in {bag}]`"""

    FORM = "{number} plug {plug}[ in {bag}]"
    number: Word
    plug: Word
    bag: Text | None
    span: Span


class SpareThing(Node):
    """`{number} of {what}[ in {bag}]`"""

    FORM = "{number} of {what}[ in {bag}]"
    number: Word
    what: Text
    bag: Text | None
    span: Span


class AsBuilt(Node):
    """`as-built {letter} {items}`"""

    FORM = "as-built {letter} {items}"
    letter: Word
    items: tuple[Node, ...]
    span: Span


class BuiltLead(Node):
    """`{mark} {length}[ plugs {plugs}][ {date}][ by {who}]`"""

    FORM = "{mark} {length}[ plugs {plugs}][ {date}][ by {who}]"
    mark: Word
    length: Amount
    plugs: Plugs | None
    date: Word | None
    who: Text | None
    span: Span


class Swap(Node):
    """`swap {out} for {into}[ field-note {note}]`"""

    FORM = "swap {out} for {into}[ field-note {note}]"
    out: Word
    into: Word
    note: Word | None
    span: Span


class Done(Node):
    """`done {changes|, }`"""

    FORM = "done {changes|, }"
    changes: tuple[Word, ...]
    span: Span


class FieldNote(Node):
    """`field-note {number} {date} {text}[ by {who}][ {state}]`"""

    FORM = "field-note {number} {date} {text}[ by {who}][ {state}]"
    number: Word
    date: Word
    text: Text
    who: Text | None
    state: Word | None
    span: Span


class Accept(Node):
    """`accept {rule}[ on {target}] {reason} by {who} until {date}[ seal {seal}]`"""

    FORM = "accept {rule}[ on {target}] {reason} by {who} until {date}[ seal {seal}]"
    rule: Word
    target: Endpoint | LeadMark | None
    reason: Text
    who: Text
    date: Word
    seal: Text | None
    span: Span


class LeadMark(Node):
    """`{mark}`"""

    FORM = "{mark}"
    mark: Word
    span: Span
