"""Cable, plugs, strips and premade lengths of a bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.jacks import Barrel


class Cable(Node):
    """`cable {name}[ like {like}][ {title}] {items}`"""

    FORM = "cable {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Plug(Node):
    """`plug {name}[ like {like}][ {title}] {items}`"""

    FORM = "plug {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Strip(Node):
    """`strip {name}[ like {like}][ {title}] {items}`"""

    FORM = "strip {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Carries(Node):
    """`carries {signal}`"""

    FORM = "carries {signal}"
    signal: Word
    span: Span


class PerLength(Node):
    """`capacitance {amount}`"""

    FORM = "capacitance {amount}"
    amount: Amount
    span: Span


class Outer(Node):
    """`outer {amount}`"""

    FORM = "outer {amount}"
    amount: Amount
    span: Span


class Conductor(Node):
    """`conductor {amount}[ {strand}]`"""

    FORM = "conductor {amount}[ {strand}]"
    amount: Amount
    strand: Word | None
    span: Span


class Conductors(Node):
    """`conductors {number}`"""

    FORM = "conductors {number}"
    number: Word
    span: Span


class Colour(Node):
    """A colour code of IEC 60757."""

    FORM = "colour {code}"
    code: Word
    span: Span


class Fits(Node):
    """`fits {connector}`"""

    FORM = "fits {connector}"
    connector: Word | Barrel
    span: Span


class StandsOut(Node):
    """`stands out {amount}`"""

    FORM = "stands out {amount}"
    amount: Amount
    span: Span


class Bend(Node):
    """`bend {amount}`"""

    FORM = "bend {amount}"
    amount: Amount
    span: Span


class Leaves(Node):
    """`leaves at {amount}`"""

    FORM = "leaves at {amount}"
    amount: Amount
    span: Span


class Wide(Node):
    """`wide {amount}`"""

    FORM = "wide {amount}"
    amount: Amount
    span: Span


class Tall(Node):
    """`tall {amount}`"""

    FORM = "tall {amount}"
    amount: Amount
    span: Span


class CutIn(Node):
    """`cut-in {amount}`"""

    FORM = "cut-in {amount}"
    amount: Amount
    span: Span


class Pull(Node):
    """`pull {amount}`"""

    FORM = "pull {amount}"
    amount: Amount
    span: Span


class Roll(Node):
    """`roll {amount}`"""

    FORM = "roll {amount}"
    amount: Amount
    span: Span


class StripBack(Node):
    """`strip jacket {jacket} screen {screen} core {core}`"""

    FORM = "strip jacket {jacket} screen {screen} core {core}"
    jacket: Amount
    screen: Amount
    core: Amount
    span: Span


class Poles(Node):
    """`poles {number}`"""

    FORM = "poles {number}"
    number: Word
    span: Span


class AtPanel(Node):
    """`soldered`"""

    FORM = "soldered"
    span: Span


class Mating(Node):
    """`mates {kind}`"""

    FORM = "mates {kind}"
    kind: Word
    span: Span


class Cycles(Node):
    """`lasts {number} cycles`"""

    FORM = "lasts {number} cycles"
    number: Word
    span: Span


class Premade(Node):
    """`premade {signal} {lengths|, }[ price {prices|, }][ mass {masses|, }]`"""

    FORM = "premade {signal} {lengths|, }[ price {prices|, }][ mass {masses|, }]"
    signal: Word
    lengths: tuple[Amount, ...]
    prices: tuple[Amount, ...] | None
    masses: tuple[Amount, ...] | None
    span: Span
