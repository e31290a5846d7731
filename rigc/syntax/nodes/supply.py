"""What a unit needs of power, and what a supply gives."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.jacks import Barrel, Captive, Connector, Location, Names


class Needs(Node):
    """`needs {voltage} {current}`"""

    FORM = "needs {voltage} {current}"
    voltage: Amount
    current: Word
    span: Span


class Accepts(Node):
    """`accepts {low}..{high}`"""

    FORM = "accepts {low}..{high}"
    low: Amount
    high: Amount
    span: Span


class Polarity(Node):
    """`polarity {kind}`"""

    FORM = "polarity {kind}"
    kind: Word
    span: Span


class Draws(Node):
    """`draws {amount}`"""

    FORM = "draws {amount}"
    amount: Amount
    span: Span


class Starts(Node):
    """`starts {amount}`"""

    FORM = "starts {amount}"
    amount: Amount
    span: Span


class Ground(Node):
    """Which pole of its supply is the audio ground."""

    FORM = "ground {pole}"
    pole: Word
    span: Span


class Battery(Node):
    """`battery {kind}[ {capacity}][ {only}]`"""

    FORM = "battery {kind}[ {capacity}][ {only}]"
    kind: Text
    capacity: Amount | None
    only: Word | None
    span: Span


class Bypass(Node):
    """`bypass {kind}`"""

    FORM = "bypass {kind}"
    kind: Word
    span: Span


class Unpowered(Node):
    """`unpowered {kind}`"""

    FORM = "unpowered {kind}"
    kind: Word
    span: Span


class Latency(Node):
    """`latency {amount}`"""

    FORM = "latency {amount}"
    amount: Amount
    span: Span


class InternalPath(Node):
    """`path {start} -> {end} {how}`"""

    FORM = "path {start} -> {end} {how}"
    start: Word
    end: Word
    how: Word
    span: Span


class Track(Node):
    """`track {amount}`"""

    FORM = "track {amount}"
    amount: Amount
    span: Span


class Clock(Node):
    """`clock {kind}`"""

    FORM = "clock {kind}"
    kind: Word
    span: Span


class Supply(Node):
    """`supply {name}[ like {like}][ {title}] {items}`"""

    FORM = "supply {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Technology(Node):
    """`{kind}`"""

    FORM = "{kind}"
    kind: Word
    span: Span


class MinusEarthed(Node):
    """`minus earthed`"""

    FORM = "minus earthed"
    span: Span


class Core(Node):
    """The frequency that a transformer is laid out for."""

    FORM = "core {amount}"
    amount: Amount
    span: Span


class Ceiling(Node):
    """`ceiling {amount}`"""

    FORM = "ceiling {amount}"
    amount: Amount
    span: Span


class Outlet(Node):
    """`outlet {names} {ratings| or }[ {connector}][ {polarity}] {isolation}[ {captive}][ {location}]`"""

    FORM = "outlet {names} {ratings| or }[ {connector}][ {polarity}] {isolation}[ {captive}][ {location}]"
    names: Names
    ratings: tuple[Rating, ...]
    connector: OutletConnector | None
    polarity: Polarity | None
    isolation: Isolated | Common
    captive: Captive | None
    location: Location | None
    span: Span


class Rating(Node):
    """`{voltage} {kind} {current}`"""

    FORM = "{voltage} {kind} {current}"
    voltage: Amount
    kind: Word
    current: Amount
    span: Span


class Isolated(Node):
    """`isolated`"""

    FORM = "isolated"
    span: Span


class Common(Node):
    """Outlets of one group share one common return."""

    FORM = "common {group}"
    group: Word
    span: Span


class OutletConnector(Node):
    """`connector {connector}`"""

    FORM = "connector {connector}"
    connector: Barrel | Connector
    span: Span


class Efficiency(Node):
    """`efficiency {amount}`"""

    FORM = "efficiency {amount}"
    amount: Amount
    span: Span


class PowerFactor(Node):
    """`power factor {number}`"""

    FORM = "power factor {number}"
    number: Word
    span: Span


class MainsStrip(Node):
    """A strip of mains sockets that is bought as it is."""

    FORM = "mains-strip {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Sockets(Node):
    """`sockets {count}`"""

    FORM = "sockets {count}"
    count: Word
    span: Span


class Cord(Node):
    """The length of its own mains lead."""

    FORM = "lead {length}"
    length: Amount
    span: Span
