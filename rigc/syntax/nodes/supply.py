"""What a unit needs of power, and what a supply gives."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.jacks import Barrel, Captive, Connector, Location, Names


class Needs(Node):
    voltage: Amount
    current: Word


class Accepts(Node):
    low: Amount
    high: Amount


class Polarity(Node):
    kind: Word


class Draws(Node):
    amount: Amount


class Takes(Node):
    """What a thing with a mains lead of its own takes, as its plate says: in VA or W."""

    amount: Amount


class Starts(Node):
    amount: Amount


class Ground(Node):
    """Which pole of its supply is the audio ground."""

    pole: Word


class Battery(Node):
    kind: Text
    capacity: Amount | None
    only: Word | None


class Bypass(Node):
    kind: Word


class Unpowered(Node):
    kind: Word


class Latency(Node):
    amount: Amount


class InternalPath(Node):
    start: Word
    end: Word
    how: Word


class Track(Node):
    amount: Amount


class Clock(Node):
    kind: Word


class Supply(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Pack(Node):
    """The battery from which a supply gives: an energy, or a charge with the voltage of the cells at which it is meant."""

    kind: Text
    capacity: Amount | None
    cells: Amount | None
    only: Word | None


class PlugTop(Node):
    """A supply whose body is its mains plug, and the type of its pins."""

    pins: Word | None


class Technology(Node):
    kind: Word


class MinusEarthed(Node):
    """The minus of its outlets is joined with its protective earth."""


class Core(Node):
    """The frequency that a transformer is laid out for."""

    amount: Amount


class Ceiling(Node):
    amount: Amount


class Outlet(Node):
    names: Names
    ratings: tuple[Rating, ...]
    connector: OutletConnector | None
    polarity: Polarity | None
    isolation: Isolated | Common
    captive: Captive | None
    location: Location | None


class Rating(Node):
    voltage: Amount
    kind: Word
    current: Amount


class Isolated(Node):
    """The outlet's minus is joined to no other outlet's."""


class Common(Node):
    """Outlets of one group share one common return."""

    group: Word


class OutletConnector(Node):
    connector: Barrel | Connector


class Efficiency(Node):
    amount: Amount


class PowerFactor(Node):
    number: Word


class MainsStrip(Node):
    """A strip of mains sockets that is bought as it is."""

    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Fuse(Node):
    """The fuse that stands in it: its characteristic, rating and size, at which mains, and what else is marked on it."""

    kind: Word | None
    rating: Amount
    size: FuseSize | None
    voltage: Amount | None
    marked: Text | None


class FuseSize(Node):
    across: Amount
    length: Amount


class Sockets(Node):
    count: Word


class Cord(Node):
    """The length of its own mains lead."""

    length: Amount
