"""Chains, loops, blends, presets, songs, MIDI and control."""

from __future__ import annotations

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Chain(Node):
    """`chain[ {head}] {path}`"""

    FORM = "chain[ {head}] {path}"
    head: ChainHead | None
    path: Path
    span: Span


class ChainHead(Node):
    """When a chain holds: its name, its scenarios, its instrument."""

    name: Word | None
    scenarios: tuple[Word, ...] | None
    instrument: Word | None
    span: Span

    def __str__(self) -> str:
        parts = [
            str(self.name) if self.name else "",
            f"for {', '.join(map(str, self.scenarios))}" if self.scenarios else "",
            f"with {self.instrument}" if self.instrument else "",
        ]
        return " ".join(part for part in parts if part) + ":"


class Path(Node):
    """`{first}[ {hops| }]`"""

    FORM = "{first}[ {hops| }]"
    first: Stop
    hops: tuple[Hop, ...]
    span: Span


class Hop(Node):
    """`{link} {stop}`"""

    FORM = "{link} {stop}"
    link: Word
    stop: Stop
    span: Span


class Stop(Node):
    """`{thing}[.{jack}]`"""

    FORM = "{thing}[.{jack}]"
    thing: Word
    jack: Word | None
    span: Span


class Endpoint(Node):
    """`{thing}[.{jack}]`"""

    FORM = "{thing}[.{jack}]"
    thing: Word
    jack: Word | None
    span: Span


class Order(Node):
    """`order {first} before {second}[ {text}]`"""

    FORM = "order {first} before {second}[ {text}]"
    first: Word
    second: Word
    text: Text | None
    span: Span


class LoopHolds(Node):
    """`loop {number} of {switcher} holds {path}`"""

    FORM = "loop {number} of {switcher} holds {path}"
    number: Word
    switcher: Word
    path: Path
    span: Span


class LoopEmpty(Node):
    """`loop {number} of {switcher} empty`"""

    FORM = "loop {number} of {switcher} empty"
    number: Word
    switcher: Word
    span: Span


class Blend(Node):
    """`blend {name} {items}`"""

    FORM = "blend {name} {items}"
    name: Word
    items: tuple[Node, ...]
    span: Span


class BlendDry(Node):
    """`dry {share}`"""

    FORM = "dry {share}"
    share: Amount
    span: Span


class BlendWet(Node):
    """`wet {share}[ loop {number}][ {inverted}] through {path}`"""

    FORM = "wet {share}[ loop {number}][ {inverted}] through {path}"
    share: Amount
    number: Word | None
    inverted: Word | None
    path: Path
    span: Span


class Feedback(Node):
    """`feedback {unit}[ {text}]`"""

    FORM = "feedback {unit}[ {text}]"
    unit: Word
    text: Text | None
    span: Span


class Mute(Node):
    """`mute {unit} {how}`"""

    FORM = "mute {unit} {how}"
    unit: Word
    how: Word
    span: Span


class BypassPlan(Node):
    """`bypass {start} -> {end} {text}`"""

    FORM = "bypass {start} -> {end} {text}"
    start: Stop
    end: Stop
    text: Text
    span: Span


class Preset(Node):
    """`preset {number}[ {title}] {items}`"""

    FORM = "preset {number}[ {title}] {items}"
    number: Word
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class PresetLoops(Node):
    """`loops {loops|, }[ of {switcher}]`"""

    FORM = "loops {loops|, }[ of {switcher}]"
    loops: tuple[Word, ...]
    switcher: Word | None
    span: Span


class PresetOn(Node):
    """`on {units|, }`"""

    FORM = "on {units|, }"
    units: tuple[Word, ...]
    span: Span


class PresetOff(Node):
    """`off {units|, }`"""

    FORM = "off {units|, }"
    units: tuple[Word, ...]
    span: Span


class Program(Node):
    """`program {number} on {unit}`"""

    FORM = "program {number} on {unit}"
    number: Word
    unit: Word
    span: Span


class PresetVolume(Node):
    """`floor {amount} on {unit}`"""

    FORM = "floor {amount} on {unit}"
    amount: Amount
    unit: Word
    span: Span


class Tempo(Node):
    """`tempo {amount}`"""

    FORM = "tempo {amount}"
    amount: Amount
    span: Span


class Song(Node):
    """`song {title} {items}`"""

    FORM = "song {title} {items}"
    title: Text
    items: tuple[Node, ...]
    span: Span


class SongPreset(Node):
    """`preset {number}`"""

    FORM = "preset {number}"
    number: Word
    span: Span


class Tuning(Node):
    """`tuning {text}`"""

    FORM = "tuning {text}"
    text: Text
    span: Span


class Setting(Node):
    """`set {unit} {knob} at {hour} oclock`"""

    FORM = "set {unit} {knob} at {hour} oclock"
    unit: Word
    knob: Text
    hour: Word
    span: Span


class MidiBlock(Node):
    """`midi {items}`"""

    FORM = "midi {items}"
    items: tuple[Node, ...]
    span: Span


class Master(Node):
    """`master {unit}`"""

    FORM = "master {unit}"
    unit: Word
    span: Span


class MidiLink(Node):
    """A MIDI lead; `crossover` joins tip to ring, `shield` says that its shield is joined at both ends."""

    FORM = "{start} -> {end}[ {crossover}][ {shield}]"
    start: Endpoint
    end: Endpoint
    crossover: Word | None
    shield: Word | None
    span: Span


class ControlLink(Node):
    """A control lead; `crossover` joins tip to ring."""

    FORM = "{start} -> {end}[ {crossover}]"
    start: Endpoint
    end: Endpoint
    crossover: Word | None
    span: Span


class Channel(Node):
    """`{unit} channel {number}[ programs from {first}][ {deliberate}]`"""

    FORM = "{unit} channel {number}[ programs from {first}][ {deliberate}]"
    unit: Word
    number: Word
    first: Word | None
    deliberate: Word | None
    span: Span


class ControlBlock(Node):
    """`control {items}`"""

    FORM = "control {items}"
    items: tuple[Node, ...]
    span: Span
