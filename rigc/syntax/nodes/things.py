"""Units, amps, desks and instruments, and the facts that any of them may bear."""

from __future__ import annotations

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Instrument(Node):
    """`instrument {name}[ like {like}][ {title}] {items}`"""

    FORM = "instrument {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class SoundSource(Node):
    """A source that is no guitar: a keyboard, a microphone, a line source."""

    FORM = "source {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class SourceKind(Node):
    """`{kind}`"""

    FORM = "{kind}"
    kind: Word
    span: Span


class Amp(Node):
    """`amp {name}[ like {like}][ {title}] {items}`"""

    FORM = "amp {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Desk(Node):
    """`desk {name}[ like {like}][ {title}] {items}`"""

    FORM = "desk {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Listener(Node):
    """What sound ends at and is no amp and no desk: headphones, a recorder, a transmitter for in-ear monitors."""

    FORM = "listener {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Headphones(Node):
    """It is a pair of headphones: no mains, no ground of its own."""

    FORM = "headphones"
    span: Span


class AllUnits(Node):
    """Facts of every unit that its file declares, where the unit says nothing else."""

    FORM = "all-units {items}"
    items: tuple[Node, ...]
    span: Span


class Unit(Node):
    """`unit {name}[ like {like}][ {title}] {items}`"""

    FORM = "unit {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Sourced(Node):
    """A fact with where it comes from."""

    FORM = "{fact} {provenance}"
    fact: Node
    provenance: Provenance
    span: Span


class Provenance(Node):
    """Where a fact comes from; alone on a line, where all facts of the block do."""

    FORM = "{kind}[ {date}][ by {who}]"
    kind: Word
    date: Word | None
    who: Text | None
    span: Span


class Inductance(Node):
    """`inductance {amount}`"""

    FORM = "inductance {amount}"
    amount: Amount
    span: Span


class Resistance(Node):
    """`resistance {amount}`"""

    FORM = "resistance {amount}"
    amount: Amount
    span: Span


class Capacitance(Node):
    """`capacitance {amount}`"""

    FORM = "capacitance {amount}"
    amount: Amount
    span: Span


class Volume(Node):
    """`volume {amount}[ at {setting}]`"""

    FORM = "volume {amount}[ at {setting}]"
    amount: Amount
    setting: Amount | None
    span: Span


class Tone(Node):
    """`tone {resistance}[ {capacitor}][ at {setting}]`"""

    FORM = "tone {resistance}[ {capacitor}][ at {setting}]"
    resistance: Amount
    capacitor: Amount | None
    setting: Amount | None
    span: Span


class GuitarLead(Node):
    """The lead from the instrument to the board or to its body-pack."""

    FORM = "lead {length} of {cable}"
    length: Amount
    cable: Word
    span: Span


class PlainLead(Node):
    """The stage lead that a wireless system replaces."""

    FORM = "plain lead {length} of {cable}"
    length: Amount
    cable: Word
    span: Span


class Active(Node):
    """The instrument has its own buffer."""

    FORM = "active"
    span: Span


class LowestNote(Node):
    """`lowest note {amount}`"""

    FORM = "lowest note {amount}"
    amount: Amount
    span: Span


class Earth(Node):
    """`{kind}`"""

    FORM = "{kind}"
    kind: Word
    span: Span


class Role(Node):
    """`{kind}`"""

    FORM = "{kind}"
    kind: Word
    span: Span


class Version(Node):
    """`version {text}`"""

    FORM = "version {text}"
    text: Text
    span: Span


class Fitted(Node):
    """`fitted version {text}`"""

    FORM = "fitted version {text}"
    text: Text
    span: Span


class Serial(Node):
    """`serial {text}`"""

    FORM = "serial {text}"
    text: Text
    span: Span


class Owner(Node):
    """`owner {text}`"""

    FORM = "owner {text}"
    text: Text
    span: Span


class Insured(Node):
    """`insured {amount}`"""

    FORM = "insured {amount}"
    amount: Amount
    span: Span


class Origin(Node):
    """`origin {code}`"""

    FORM = "origin {code}"
    code: Word
    span: Span


class Price(Node):
    """`price {amount}`"""

    FORM = "price {amount}"
    amount: Amount
    span: Span


class Body(Node):
    """`body {width} x {depth} x {height}`"""

    FORM = "body {width} x {depth} x {height}"
    width: Amount
    depth: Amount
    height: Amount
    span: Span


class Mass(Node):
    """`mass {amount}`"""

    FORM = "mass {amount}"
    amount: Amount
    span: Span


class Feet(Node):
    """`feet {kind}`"""

    FORM = "feet {kind}"
    kind: Word
    span: Span


class Base(Node):
    """`base {kind}`"""

    FORM = "base {kind}"
    kind: Word
    span: Span


class FootSwitch(Node):
    """`switch at {x}, {y}[ {action}]`"""

    FORM = "switch at {x}, {y}[ {action}]"
    x: Amount
    y: Amount
    action: Word | None
    span: Span


class Knob(Node):
    """`knob[ {name}] at {x}, {y}`"""

    FORM = "knob[ {name}] at {x}, {y}"
    name: Text | None
    x: Amount
    y: Amount
    span: Span


class Treadle(Node):
    """Height with the heel down and the toe down."""

    FORM = "treadle {low}..{high}"
    low: Amount
    high: Amount
    span: Span


class NoTape(Node):
    """A part of the base that tape must leave free."""

    FORM = "{what} {width} x {depth} at {x}, {y}"
    what: Word
    width: Amount
    depth: Amount
    x: Amount
    y: Amount
    span: Span


class Vents(Node):
    """`vents {side}`"""

    FORM = "vents {side}"
    side: Word
    span: Span


class Warm(Node):
    """`warm {amount}`"""

    FORM = "warm {amount}"
    amount: Amount
    span: Span


class Was(Node):
    """The name that this thing bore in the revision before."""

    FORM = "was {name}"
    name: Word
    span: Span


class StandsIn(Node):
    """The thing of the revision before whose place this other one takes."""

    FORM = "stands in for {name}"
    name: Word
    span: Span


class Flag(Node):
    """A property that needs no number."""

    FORM = "{words}"
    words: Word
    span: Span


class Band(Node):
    """`band {low}..{high} allowed {countries|, }`"""

    FORM = "band {low}..{high} allowed {countries|, }"
    low: Amount
    high: Amount
    countries: tuple[Word, ...]
    span: Span
