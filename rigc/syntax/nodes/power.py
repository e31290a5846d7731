"""Which outlet feeds which unit, as the source states it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class PowerBlock(Node):
    items: tuple[Node, ...]


class Feed(Node):
    units: tuple[Word, ...]
    outlets: tuple[Endpoint, ...]
    voltage: Amount | None
    how: Word | None
    lower: Endpoint | None
    reversed: Word | None


class Plugged(Node):
    """Which supplies and amps are plugged into a mains strip."""

    things: tuple[Word, ...]
    strip: Word


class Others(Node):
    supplies: tuple[Word, ...]


class Alone(Node):
    unit: Word


class ReversedFeed(Node):
    unit: Word


class MayShare(Node):
    units: tuple[Word, ...]


class SpareOutlets(Node):
    number: Word
    supply: Word | None


class ReserveOutlet(Node):
    voltage: Amount
    kind: Word
    current: Amount
    text: Text | None
