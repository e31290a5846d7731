"""Leads with their numbers, what they are made of, and how things are held down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class LeadsBlock(Node):
    """`leads {items}`"""

    FORM = "leads {items}"
    items: tuple[Node, ...]
    span: Span


class Lead(Node):
    """`{mark} {start} -> {end}[ {plugs}][ of {cable}][ {run}][ {slack}][ {made}]`"""

    FORM = "{mark} {start} -> {end}[ {plugs}][ of {cable}][ {run}][ {slack}][ {made}]"
    mark: Word
    start: Endpoint
    end: Endpoint
    plugs: Plugs | None
    cable: Word | None
    run: Word | None
    slack: LeadSlack | None
    made: Made | None
    span: Span


class Plugs(Node):
    """`{first} to {second}`"""

    FORM = "{first} to {second}"
    first: Word
    second: Word
    span: Span


class LeadSlack(Node):
    """`slack {amount}`"""

    FORM = "slack {amount}"
    amount: Amount
    span: Span


class Made(Node):
    """A lead that exists."""

    FORM = "{how} {length}[ in {revision}]"
    how: Word
    length: Amount
    revision: Text | None
    span: Span


class Adaptor(Node):
    """`{mark} {kind} for {unit}`"""

    FORM = "{mark} {kind} for {unit}"
    mark: Word
    kind: Word
    unit: Word
    span: Span


class Retired(Node):
    """`retired {mark}`"""

    FORM = "retired {mark}"
    mark: Word
    span: Span


class Tie(Node):
    """`tie {first} and {second}`"""

    FORM = "tie {first} and {second}"
    first: Word
    second: Word
    span: Span


class Lane(Node):
    """`lane {signal} {y}`"""

    FORM = "lane {signal} {y}"
    signal: Word
    y: Amount
    span: Span


class StockChoice(Node):
    """`{signal} cable {cable}`"""

    FORM = "{signal} cable {cable}"
    signal: Word
    cable: Word
    span: Span


class PlugChoice(Node):
    """`{signal} plug {plug}`"""

    FORM = "{signal} plug {plug}"
    signal: Word
    plug: Word
    span: Span


class Cutting(Node):
    """`{signal} {how}`"""

    FORM = "{signal} {how}"
    signal: Word
    how: Word
    span: Span


class MountingBlock(Node):
    """`mounting {items}`"""

    FORM = "mounting {items}"
    items: tuple[Node, ...]
    span: Span


class MountAll(Node):
    """`all with {strip}`"""

    FORM = "all with {strip}"
    strip: Word
    span: Span


class Mount(Node):
    """`{things|, } with {strip}`"""

    FORM = "{things|, } with {strip}"
    things: tuple[Word, ...]
    strip: Word
    span: Span


class Fixing(Node):
    """`{things|, } {how}`"""

    FORM = "{things|, } {how}"
    things: tuple[Word, ...]
    how: Word
    span: Span


class Bridged(Node):
    """`{thing} bridged[ {text}]`"""

    FORM = "{thing} bridged[ {text}]"
    thing: Word
    text: Text | None
    span: Span
