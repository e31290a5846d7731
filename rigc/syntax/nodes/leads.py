"""Leads with their numbers, what they are made of, and how things are held down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class LeadsBlock(Node):
    items: tuple[Node, ...]


class Lead(Node):
    mark: Word
    start: Endpoint
    end: Endpoint
    plugs: Plugs | None
    cable: Word | None
    run: Word | None
    through: LeadThrough | None
    slack: LeadSlack | None
    made: Made | None


class Plugs(Node):
    first: Word
    second: Word


class LeadThrough(Node):
    """The drop lines by which its ends go through the deck: one for both, or one for each."""

    lines: tuple[Amount, ...]


class LeadSlack(Node):
    amount: Amount


class Made(Node):
    """A lead that exists."""

    how: Word
    length: Amount
    revision: Text | None


class Adaptor(Node):
    mark: Word
    kind: Word
    unit: Word


class Retired(Node):
    mark: Word


class Tie(Node):
    first: Word
    second: Word


class Lane(Node):
    signal: Word
    y: Amount


class StockChoice(Node):
    signal: Word
    cable: Word


class PlugChoice(Node):
    signal: Word
    plug: Word


class Cutting(Node):
    signal: Word
    how: Word


class MountingBlock(Node):
    items: tuple[Node, ...]


class MountAll(Node):
    strip: Word


class Mount(Node):
    things: tuple[Word, ...]
    strip: Word


class Fixing(Node):
    things: tuple[Word, ...]
    how: Word


class Bridged(Node):
    thing: Word
    text: Text | None
