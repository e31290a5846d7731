"""Tests, spares, as-built facts, field notes, and findings that are accepted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.leads import Plugs
    from rigc.syntax.nodes.signal import Endpoint


class TestsBlock(Node):
    items: tuple[Node, ...]


class Expected(Node):
    number: Word
    point: Endpoint | LeadMark
    amount: Amount


class Reading(Node):
    date: Word
    number: Word
    point: Endpoint | LeadMark
    amount: Amount
    who: Text


class Every(Node):
    number: Word
    task: Text


class SparesBlock(Node):
    items: tuple[Node, ...]


class SpareLead(Node):
    number: Word
    signal: Word
    length: Amount
    bag: Text | None


class SparePlug(Node):
    number: Word
    plug: Word
    bag: Text | None


class SpareThing(Node):
    number: Word
    what: Text
    bag: Text | None


class SpareUnit(Node):
    """A thing that is declared and travels, though the board does not use it."""

    name: Word
    bag: Text | None


class AsBuilt(Node):
    letter: Word
    items: tuple[Node, ...]


class BuiltLead(Node):
    mark: Word
    length: Amount
    plugs: Plugs | None
    date: Word | None
    who: Text | None


class Swap(Node):
    out: Word
    into: Word
    note: Word | None


class Done(Node):
    changes: tuple[Word, ...]


class FieldNote(Node):
    number: Word
    date: Word
    text: Text
    who: Text | None
    state: Word | None


class Accept(Node):
    rule: Word
    target: Endpoint | LeadMark | None
    reason: Text
    who: Text
    date: Word
    seal: Text | None


class LeadMark(Node):
    mark: Word
