"""Units, amps, desks and instruments, and the facts that any of them may bear."""

from __future__ import annotations

from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Instrument(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class SoundSource(Node):
    """A source that is no guitar: a keyboard, a microphone, a line source."""

    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class SourceKind(Node):
    kind: Word


class Amp(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Desk(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Listener(Node):
    """What sound ends at and is no amp and no desk: headphones, a recorder, a transmitter for in-ear monitors."""

    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Headphones(Node):
    """It is a pair of headphones: no mains, no ground of its own."""


class AllUnits(Node):
    """Facts of every unit that its file declares, where the unit says nothing else."""

    items: tuple[Node, ...]


class Unit(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Sourced(Node):
    """A fact with where it comes from."""

    fact: Node
    provenance: Provenance


class Provenance(Node):
    """Where a fact comes from; alone on a line, where all facts of the block do."""

    kind: Word
    date: Word | None
    who: Text | None


class Inductance(Node):
    amount: Amount


class Resistance(Node):
    amount: Amount


class Capacitance(Node):
    amount: Amount


class Volume(Node):
    amount: Amount
    setting: Amount | None


class Tone(Node):
    resistance: Amount
    capacitor: Amount | None
    setting: Amount | None


class GuitarLead(Node):
    """The lead from the instrument to the board or to its body-pack."""

    length: Amount
    cable: Word


class PlainLead(Node):
    """The stage lead that a wireless system replaces."""

    length: Amount
    cable: Word


class Active(Node):
    """The instrument has its own buffer."""


class LowestNote(Node):
    amount: Amount


class Earth(Node):
    kind: Word


class Role(Node):
    kind: Word


class Version(Node):
    text: Text


class Fitted(Node):
    text: Text


class Firmware(Node):
    text: Text


class Serial(Node):
    text: Text


class Owner(Node):
    text: Text


class Insured(Node):
    amount: Amount


class Origin(Node):
    code: Word


class Price(Node):
    amount: Amount


class Body(Node):
    width: Amount
    depth: Amount
    height: Amount


class Mass(Node):
    amount: Amount


class Feet(Node):
    kind: Word


class Base(Node):
    kind: Word


class FootSwitch(Node):
    x: Amount
    y: Amount
    action: Word | None


class Knob(Node):
    name: Text | None
    x: Amount
    y: Amount


class Treadle(Node):
    """Height with the heel down and the toe down."""

    low: Amount
    high: Amount


class NoTape(Node):
    """A part of the base that tape must leave free."""

    what: Word
    width: Amount
    depth: Amount
    x: Amount
    y: Amount


class Vents(Node):
    side: Word


class Warm(Node):
    amount: Amount


class Was(Node):
    """The name that this thing bore in the revision before."""

    name: Word


class StandsIn(Node):
    """The thing of the revision before whose place this other one takes."""

    name: Word


class Flag(Node):
    """A property that needs no number."""

    words: Word


class Band(Node):
    low: Amount
    high: Amount
    countries: tuple[Word, ...]
