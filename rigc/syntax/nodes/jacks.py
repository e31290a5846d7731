"""The jacks of a thing, where they sit and what they carry."""

from __future__ import annotations

from rigc.syntax.nodes.node import Amount, Node, Word


class Names(Node):
    """One name, or a run of numbered ones."""

    first: Word
    last: Word | None


class Location(Node):
    side: Word
    offset: Amount
    last: Amount | None
    height: Amount | None
    bushing: Word | None


class Input(Node):
    names: Names
    jack: Word
    impedance: Amount | None
    location: Location | None
    carries: Word | None


class Output(Node):
    names: Names
    jack: Word
    impedance: Amount | None
    location: Location | None
    carries: Word | None


class Inlet(Node):
    name: Word
    connector: Barrel | Connector | Appliance
    captive: Captive | None
    location: Location | None


class Barrel(Node):
    outer: Amount
    inner: Amount


class Connector(Node):
    kind: Word


class Appliance(Node):
    """An appliance inlet by its number in IEC 60320."""

    kind: Word


class Captive(Node):
    length: Amount


class MidiJack(Node):
    direction: Word
    name: Word
    jack: Word
    location: Location | None
    form: MidiForm | None


class MidiForm(Node):
    form: Word


class Expression(Node):
    direction: Word
    name: Word
    jack: Word
    wiper: Word
    track: Amount
    taper: Word | None
    location: Location | None


class ControlJack(Node):
    direction: Word
    name: Word
    jack: Word
    location: Location | None
    contact: Word | None


class Usb(Node):
    name: Word
    location: Location | None


class StereoPair(Node):
    left: Word
    right: Word


class Level(Node):
    jacks: Names
    nominal: Amount | None
    peak: Amount | None
    maximum: Amount | None
    sensitivity: Amount | None


class Impedance(Node):
    jacks: Names
    amount: Amount


class Phantom(Node):
    """What a jack has to do with phantom power: it gives, needs, bears or never may get it, or has none."""

    jacks: Names
    how: Word
    voltage: Amount | None


class JackLift(Node):
    """The jack has a ground lift; the position in which it leaves its maker."""

    jacks: Names
    position: Word | None


class Gain(Node):
    amount: Amount


class LoopJacks(Node):
    """The jacks of the loops of a switcher, a blender or an amp."""

    first: Word
    last: Word | None
    sends: Names
    returns: Names
    mix: Word | None
