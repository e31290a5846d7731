"""The jacks of a thing, where they sit and what they carry."""

from __future__ import annotations

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Word


class Names(Node):
    """One name, or a run of numbered ones."""

    FORM = "{first}[..{last}]"
    first: Word
    last: Word | None
    span: Span


class Location(Node):
    """`{side} {offset}[..{last}][ up {height}][ {bushing}]`"""

    FORM = "{side} {offset}[..{last}][ up {height}][ {bushing}]"
    side: Word
    offset: Amount
    last: Amount | None
    height: Amount | None
    bushing: Word | None
    span: Span


class Input(Node):
    """`input {names} {jack}[ {impedance}][ {location}][ {carries}]`"""

    FORM = "input {names} {jack}[ {impedance}][ {location}][ {carries}]"
    names: Names
    jack: Word
    impedance: Amount | None
    location: Location | None
    carries: Word | None
    span: Span


class Output(Node):
    """`output {names} {jack}[ {impedance}][ {location}][ {carries}]`"""

    FORM = "output {names} {jack}[ {impedance}][ {location}][ {carries}]"
    names: Names
    jack: Word
    impedance: Amount | None
    location: Location | None
    carries: Word | None
    span: Span


class Inlet(Node):
    """`inlet {name} {connector}[ {captive}][ {location}]`"""

    FORM = "inlet {name} {connector}[ {captive}][ {location}]"
    name: Word
    connector: Barrel | Connector | Appliance
    captive: Captive | None
    location: Location | None
    span: Span


class Barrel(Node):
    """`barrel {outer} x {inner}`"""

    FORM = "barrel {outer} x {inner}"
    outer: Amount
    inner: Amount
    span: Span


class Connector(Node):
    """`{kind}`"""

    FORM = "{kind}"
    kind: Word
    span: Span


class Appliance(Node):
    """An appliance inlet by its number in IEC 60320."""

    FORM = "{kind}"
    kind: Word
    span: Span


class Captive(Node):
    """`captive {length}`"""

    FORM = "captive {length}"
    length: Amount
    span: Span


class MidiJack(Node):
    """`midi {direction} {name} {jack}[ {location}][ {form}]`"""

    FORM = "midi {direction} {name} {jack}[ {location}][ {form}]"
    direction: Word
    name: Word
    jack: Word
    location: Location | None
    form: MidiForm | None
    span: Span


class MidiForm(Node):
    """`type {form}`"""

    FORM = "type {form}"
    form: Word
    span: Span


class Expression(Node):
    """`expression {direction} {name} {jack} {wiper} {track}[ {taper}][ {location}]`"""

    FORM = "expression {direction} {name} {jack} {wiper} {track}[ {taper}][ {location}]"
    direction: Word
    name: Word
    jack: Word
    wiper: Word
    track: Amount
    taper: Word | None
    location: Location | None
    span: Span


class ControlJack(Node):
    """`control {direction} {name} {jack}[ {location}][ {contact}]`"""

    FORM = "control {direction} {name} {jack}[ {location}][ {contact}]"
    direction: Word
    name: Word
    jack: Word
    location: Location | None
    contact: Word | None
    span: Span


class Usb(Node):
    """`usb {name}[ {location}]`"""

    FORM = "usb {name}[ {location}]"
    name: Word
    location: Location | None
    span: Span


class StereoPair(Node):
    """`pair {left}, {right}`"""

    FORM = "pair {left}, {right}"
    left: Word
    right: Word
    span: Span


class Level(Node):
    """`level {jacks}[ {nominal}][ peak {peak}][ max {maximum}][ sensitivity {sensitivity}]`"""

    FORM = "level {jacks}[ {nominal}][ peak {peak}][ max {maximum}][ sensitivity {sensitivity}]"
    jacks: Names
    nominal: Amount | None
    peak: Amount | None
    maximum: Amount | None
    sensitivity: Amount | None
    span: Span


class Impedance(Node):
    """`impedance {jacks} {amount} bypassed`"""

    FORM = "impedance {jacks} {amount} bypassed"
    jacks: Names
    amount: Amount
    span: Span


class Phantom(Node):
    """What a jack has to do with phantom power: it gives, needs, bears or never may get it, or has none."""

    FORM = "phantom {jacks} {how}[ {voltage}]"
    jacks: Names
    how: Word
    voltage: Amount | None
    span: Span


class JackLift(Node):
    """The jack has a ground lift; the position in which it leaves its maker."""

    FORM = "lift {jacks}[ {position}]"
    jacks: Names
    position: Word | None
    span: Span


class Gain(Node):
    """`gain {amount}`"""

    FORM = "gain {amount}"
    amount: Amount
    span: Span


class LoopJacks(Node):
    """The jacks of the loops of a switcher, a blender or an amp."""

    FORM = "loop {first}[..{last}] send {sends} return {returns}[ {mix}]"
    first: Word
    last: Word | None
    sends: Names
    returns: Names
    mix: Word | None
    span: Span
