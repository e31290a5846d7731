"""Which outlet feeds which unit, as the source states it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class PowerBlock(Node):
    """`power {items}`"""

    FORM = "power {items}"
    items: tuple[Node, ...]
    span: Span


class Feed(Node):
    """`{units|, } from {outlets|, }[ at {voltage}][ {how}][ lower {lower}][ {reversed}]`"""

    FORM = "{units|, } from {outlets|, }[ at {voltage}][ {how}][ lower {lower}][ {reversed}]"
    units: tuple[Word, ...]
    outlets: tuple[Endpoint, ...]
    voltage: Amount | None
    how: Word | None
    lower: Endpoint | None
    reversed: Word | None
    span: Span


class Plugged(Node):
    """Which supplies and amps are plugged into a mains strip."""

    FORM = "{things|, } plug into {strip}"
    things: tuple[Word, ...]
    strip: Word
    span: Span


class Others(Node):
    """`others from {supplies|, }`"""

    FORM = "others from {supplies|, }"
    supplies: tuple[Word, ...]
    span: Span


class Alone(Node):
    """`{unit} alone`"""

    FORM = "{unit} alone"
    unit: Word
    span: Span


class ReversedFeed(Node):
    """`{unit} reversed`"""

    FORM = "{unit} reversed"
    unit: Word
    span: Span


class MayShare(Node):
    """`{units|, } may share`"""

    FORM = "{units|, } may share"
    units: tuple[Word, ...]
    span: Span


class SpareOutlets(Node):
    """`spare {number}[ of {supply}]`"""

    FORM = "spare {number}[ of {supply}]"
    number: Word
    supply: Word | None
    span: Span


class ReserveOutlet(Node):
    """`reserve {voltage} {kind} {current}[ {text}]`"""

    FORM = "reserve {voltage} {kind} {current}[ {text}]"
    voltage: Amount
    kind: Word
    current: Amount
    text: Text | None
    span: Span
