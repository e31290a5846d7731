"""What the source states about signal, control, power, leads and mounting: each statement resolved to names and numbers."""

from __future__ import annotations

from functools import cached_property

from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.source import Span


class When(Record):
    """When a connection holds: in these scenarios (empty: all), with this instrument (None: any)."""

    scenarios: tuple[str, ...] = ()
    instrument: str | None = None

    def meets(self, other: When) -> bool:
        """Whether both can hold at once."""
        together = not self.scenarios or not other.scenarios or bool(set(self.scenarios) & set(other.scenarios))
        return together and (not self.instrument or not other.instrument or self.instrument == other.instrument)


class Connection(Record):
    """A lead's two ends as a chain, loop, blend, MIDI, control or mains statement names them.

    `signal` is audio, midi, control, usb or mains; `stereo` marks both halves of a `=>`; `origin` is the statement's kind
    (`chain`, `loop 3 of signalbox`, `blend twofold`, `midi`, `control`, `lead`), `chain` the name of its chain.
    A MIDI or control lead may be a `crossover` lead (tip to ring, ring to tip), and a MIDI lead's shield joined at both ends.
    """

    start: Port
    end: Port
    signal: str
    stereo: bool
    origin: str
    when: When
    span: Span
    crossover: bool = False
    shield_at_both: bool = False


class Stop(Record):
    """A stop of a chain as written; `jack` only where the source names one."""

    thing: str
    jack: str | None
    span: Span


class Gap(Record):
    """A hop that found no jack: the thing has no audio jack of that `direction` (`in` or `out`)."""

    thing: str
    direction: str
    span: Span


class Chain(Record):
    """A chain as written: its name (empty if none), when it holds, its stops in order, and which hops are stereo."""

    name: str
    when: When
    stops: tuple[Stop, ...]
    stereo: tuple[bool, ...]
    span: Span


class LoopUse(Record):
    """What a loop of a switcher holds, in order; nothing where it is empty on purpose."""

    switcher: str
    number: int
    stops: tuple[Stop, ...]
    span: Span


class BlendPath(Record):
    """One way through a blender: `share` in percent; the dry one has no stops."""

    share: Quantity
    wet: bool
    loop: int | None
    inverted: bool
    stops: tuple[Stop, ...]
    span: Span


class Blend(Record):
    """A blender with its parallel ways."""

    unit: str
    paths: tuple[BlendPath, ...]
    span: Span


class SwitchLine(Record):
    """How a jack that switches stands in a preset: `closed` or `open`; `text` says what comes of it."""

    at: Port
    position: str
    text: str
    span: Span

    @property
    def words(self) -> str:
        """`box.ch closed, lead channel`."""
        return f"{self.at} {self.position}{f', {self.text}' if self.text else ''}"


class Preset(Record):
    """A preset: loops that are on (switcher or None, number), units on and off, programs, switch lines, volume floors in percent."""

    number: int
    title: str
    loops: tuple[tuple[str | None, int, Span], ...]
    on: tuple[tuple[str, Span], ...]
    off: tuple[tuple[str, Span], ...]
    programs: tuple[tuple[str, int, Span], ...]
    lines: tuple[SwitchLine, ...]
    floors: tuple[tuple[str, Quantity], ...]
    tempo_bpm: Quantity | None
    notes: tuple[str, ...]
    span: Span


class Song(Record):
    """A song: its preset (which may be one that the rig does not have), tempo, tuning, and knob settings as (unit, knob, hour of
    the clock)."""

    title: str
    preset: int | None
    tempo_bpm: Quantity | None
    tuning: str
    settings: tuple[tuple[str, str, int], ...]
    notes: tuple[str, ...]
    span: Span
    preset_span: Span | None = None


class Channel(Record):
    """The MIDI channel (1 to 16) on which a unit listens; its programs count from `first` (0 or 1, None: not said)."""

    unit: str
    number: int
    first: int | None
    deliberate: bool
    span: Span


class Feed(Record):
    """Where units take their power. `how` is `` (one outlet), `shared`, `series` or `parallel`; `volts` where the setting is stated.

    `lower` is the outlet of a series pair whose return is the pair's return, where the source says which.
    """

    units: tuple[str, ...]
    outlets: tuple[Port, ...]
    volts: Quantity | None
    how: str
    reversed: bool
    span: Span
    lower: Port | None = None


class PowerWishes(Record):
    """The power block: stated feeds; supplies for all other units; units that stay alone; groups that may share; outlets kept free;
    units that a reversing lead feeds from whichever outlet is chosen; what is plugged into which mains strip."""

    feeds: tuple[Feed, ...] = ()
    others: tuple[str, ...] = ()
    others_span: Span | None = None
    alone: tuple[str, ...] = ()
    alone_at: tuple[Span, ...] = ()
    may_share: tuple[tuple[str, ...], ...] = ()
    spare: tuple[tuple[int, str | None, Span], ...] = ()
    reserved: tuple[tuple[Quantity, str, Quantity, str], ...] = ()
    turned: tuple[str, ...] = ()
    plugged: tuple[tuple[str, str, Span], ...] = ()

    @cached_property
    def feed_of(self) -> dict[str, Feed]:
        """The first feed that is stated for a unit."""
        return {unit: feed for feed in reversed(self.feeds) for unit in feed.units}

    @cached_property
    def feeds_of(self) -> dict[str, list[Feed]]:
        """All feeds that are stated for a unit."""
        found: dict[str, list[Feed]] = {}
        for feed in self.feeds:
            for unit in feed.units:
                found.setdefault(unit, []).append(feed)
        return found

    @cached_property
    def feed_at(self) -> dict[Port, Feed]:
        """The first feed that is stated for an outlet."""
        return {port: feed for feed in reversed(self.feeds) for port in feed.outlets}


class LeadFacts(Record):
    """What the source states of one lead. `through_mm` are the drop lines by which its ends go through the deck, empty where none are
    stated; `made_mm` is its length where it exists; `premade` whether it was bought so.

    `end_spans`, `plug_spans` and `cable_span` are where its ends, its plugs and its cable are typed, empty or None where they are not.
    """

    mark: str
    start: Port
    end: Port
    plugs: tuple[str, str] | None
    cable: str | None
    run: str | None
    slack_mm: Quantity | None
    made_mm: Quantity | None
    premade: bool
    made_in: str
    span: Span
    mark_span: Span
    end_spans: tuple[Span, ...] = ()
    plug_spans: tuple[Span, ...] = ()
    cable_span: Span | None = None
    through_mm: tuple[float, ...] = ()


class Adaptor(Record):
    """An adaptor with a number: series, parallel, reversing or size, for one unit."""

    mark: str
    kind: str
    unit: str
    span: Span


class LeadWishes(Record):
    """The leads block: stated leads and adaptors, retired numbers, tied pairs, lanes (signal, y in mm), and per signal the
    cable, the plug and whether leads are `cut` or `premade`."""

    leads: tuple[LeadFacts, ...] = ()
    adaptors: tuple[Adaptor, ...] = ()
    retired: tuple[tuple[str, Span], ...] = ()
    ties: tuple[tuple[str, str], ...] = ()
    lanes: tuple[tuple[str, float], ...] = ()
    cables: tuple[tuple[str, str], ...] = ()
    plugs: tuple[tuple[str, str], ...] = ()
    cutting: tuple[tuple[str, str], ...] = ()


class MountWishes(Record):
    """The mounting block: the strip for all, strips by thing, fixings by thing, things on a bridge plate."""

    all_with: str | None = None
    strips: tuple[tuple[str, str], ...] = ()
    fixings: tuple[tuple[str, str], ...] = ()
    bridged: tuple[tuple[str, str], ...] = ()

    def strip_of(self, thing: str) -> str | None:
        """The strip kind stated for a thing, else the one for all."""
        return dict(self.strips).get(thing, self.all_with)

    def fixing_of(self, thing: str) -> str | None:
        """The fixing stated for a thing: bolted, screwed or brackets."""
        return dict(self.fixings).get(thing)
