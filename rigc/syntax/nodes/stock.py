"""Cable, plugs, strips and premade lengths of a bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.jacks import Barrel


class Cable(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Plug(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Strip(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Carries(Node):
    signal: Word


class PerLength(Node):
    amount: Amount


class Outer(Node):
    amount: Amount


class Conductor(Node):
    amount: Amount
    strand: Word | None


class Conductors(Node):
    number: Word


class Colour(Node):
    """A colour code of IEC 60757."""

    code: Word


class Fits(Node):
    connector: Word | Barrel


class StandsOut(Node):
    amount: Amount


class Bend(Node):
    amount: Amount


class Leaves(Node):
    amount: Amount


class Wide(Node):
    amount: Amount


class Tall(Node):
    amount: Amount


class CutIn(Node):
    amount: Amount


class Pull(Node):
    amount: Amount


class Roll(Node):
    amount: Amount


class StripBack(Node):
    jacket: Amount
    screen: Amount
    core: Amount


class Poles(Node):
    number: Word


class AtPanel(Node):
    """The end is soldered to a jack panel; there is no plug."""


class Mating(Node):
    kind: Word


class Cycles(Node):
    number: Word


class Premade(Node):
    signal: Word
    lengths: tuple[Amount, ...]
    prices: tuple[Amount, ...] | None
    masses: tuple[Amount, ...] | None
