"""Chains, loops, blends, presets, songs, MIDI and control."""

from __future__ import annotations

from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Chain(Node):
    head: ChainHead | None
    path: Path


class ChainHead(Node):
    """When a chain holds: its name, its scenarios, its instrument."""

    name: Word | None
    scenarios: tuple[Word, ...] | None
    instrument: Word | None


class Path(Node):
    first: Stop
    hops: tuple[Hop, ...]


class Hop(Node):
    link: Word
    stop: Stop


class Stop(Node):
    thing: Word
    jack: Word | None


class Endpoint(Node):
    thing: Word
    jack: Word | None


class Order(Node):
    first: Word
    second: Word
    text: Text | None


class LoopHolds(Node):
    number: Word
    switcher: Word
    path: Path


class LoopEmpty(Node):
    number: Word
    switcher: Word


class Blend(Node):
    name: Word
    items: tuple[Node, ...]


class BlendDry(Node):
    share: Amount


class BlendWet(Node):
    share: Amount
    number: Word | None
    inverted: Word | None
    path: Path


class Feedback(Node):
    unit: Word
    text: Text | None


class Mute(Node):
    unit: Word
    how: Word


class BypassPlan(Node):
    start: Stop
    end: Stop
    text: Text


class Preset(Node):
    number: Word
    title: Text | None
    items: tuple[Node, ...]


class PresetLoops(Node):
    loops: tuple[Word, ...]
    switcher: Word | None


class PresetOn(Node):
    units: tuple[Word, ...]


class PresetOff(Node):
    units: tuple[Word, ...]


class Program(Node):
    number: Word
    unit: Word


class PresetLine(Node):
    """How a jack that switches stands in a preset, and what is heard of it at the other end."""

    position: Word
    at: Endpoint
    text: Text | None


class PresetVolume(Node):
    amount: Amount
    unit: Word


class Tempo(Node):
    amount: Amount


class Song(Node):
    title: Text
    items: tuple[Node, ...]


class SongPreset(Node):
    number: Word


class Tuning(Node):
    text: Text


class Setting(Node):
    unit: Word
    knob: Text
    hour: Word


class MidiBlock(Node):
    items: tuple[Node, ...]


class Master(Node):
    unit: Word


class MidiLink(Node):
    """A MIDI lead; `crossover` joins tip to ring, `shield` says that its shield is joined at both ends."""

    start: Endpoint
    end: Endpoint
    crossover: Word | None
    shield: Word | None


class ControlLink(Node):
    """A control lead; `crossover` joins tip to ring."""

    start: Endpoint
    end: Endpoint
    crossover: Word | None


class Channel(Node):
    unit: Word
    number: Word
    first: Word | None
    deliberate: Word | None


class ControlBlock(Node):
    items: tuple[Node, ...]
