"""Rig: everything that the sources say, resolved to things and numbers; what every computation, check and sheet reads."""

from __future__ import annotations

from functools import cached_property

from rigc.model.deck import Case, Deck, Hint, LaterRoom, OffBoard, Place, Weight, deck_meant
from rigc.model.fact import Choice, Quantity
from rigc.model.jacks import Jack, Port
from rigc.model.records import Accept, AsBuilt, Change, Expected, FieldNote, Frozen, Limit, Reading, Spare
from rigc.model.stock import ChosenPlug, Stock
from rigc.model.things import Area, Instrument, MainsRange, MainsStrip, Panel, Supply, Unit
from rigc.model.wishes import (
    Blend,
    Chain,
    Channel,
    Connection,
    Gap,
    LeadWishes,
    LoopUse,
    MountWishes,
    PowerWishes,
    Preset,
    Song,
)
from rigc.record import Record
from rigc.source import Span


class Scenario(Record):
    """A place or way in which the rig is used. `amps` is None where all are used."""

    name: str
    title: str
    declared: Span
    mains: MainsRange | None
    country: str | None
    selectors: tuple[tuple[str, Quantity], ...]
    transformers: tuple[tuple[str, Quantity, Quantity, Quantity], ...]  # supply, primary V, secondary V, VA
    lifts: tuple[tuple[str, str], ...]
    amps: tuple[str, ...] | None
    notes: tuple[str, ...]
    lift_spans: tuple[tuple[str, Span], ...] = ()  # where the position of each is stated


class Head(Record):
    """The rig block: what identifies it. `letter` is the revision; `rig_class` is home, gigging, touring, fly or studio."""

    name: str
    title: str
    letter: str
    date: str
    revision_text: str
    rig_class: str
    client: str
    drawn: str
    checked: str
    frozen: Frozen | None
    follows: tuple[str, str] | None
    marker_characters: int | None
    label: str | None
    limits: tuple[Limit, ...]
    changes: tuple[Change, ...]
    span: Span
    show_min: Quantity | None = None  # how long a show keeps units plugged in
    rate: Choice | None = None  # what an hour at the bench costs
    dated: Span | None = None  # where its date stands


class BypassPlan(Record):
    """The way round the board when everything fails, from a stop to a stop."""

    start: Port
    end: Port
    text: str
    span: Span


class Intent(Record):
    """A stated intention about a unit: `mute` (tails ring, tails stop), `feedback`, `order` before another."""

    kind: str
    unit: str
    word: str
    text: str
    span: Span


class Rig(Record):
    """The whole design as stated. Dictionaries keep the order of declaration."""

    head: Head
    scenarios: dict[str, Scenario]
    instruments: dict[str, Instrument]  # and other sources
    units: dict[str, Unit]  # units, amps, desks and other listeners
    supplies: dict[str, Supply]
    mains_strips: dict[str, MainsStrip]
    panels: dict[str, Panel]
    decks: dict[str, Deck]
    cases: dict[str, Case]
    stock: Stock
    chains: tuple[Chain, ...]
    loops: tuple[LoopUse, ...]
    blends: tuple[Blend, ...]
    connections: tuple[Connection, ...]
    gaps: tuple[Gap, ...]
    bypass_plans: tuple[BypassPlan, ...]
    intents: tuple[Intent, ...]
    presets: dict[int, Preset]
    songs: tuple[Song, ...]
    channels: tuple[Channel, ...]
    midi_master: str | None
    power: PowerWishes
    places: dict[str, Place]
    off_board: dict[str, OffBoard]
    hints: tuple[Hint, ...]
    reserved_rooms: tuple[Area, ...]
    later_rooms: tuple[LaterRoom, ...]  # as stated; where they are is in `reserved_rooms`, once they have a place
    weights: tuple[Weight, ...]
    joins: tuple[tuple[str, str, tuple[str, ...]], ...]
    lead_wishes: LeadWishes
    mounting: MountWishes
    expected: tuple[Expected, ...]
    readings: tuple[Reading, ...]
    upkeep: tuple[tuple[int, str], ...]
    spares: tuple[Spare, ...]
    as_built: tuple[AsBuilt, ...]
    field_notes: tuple[FieldNote, ...]
    accepts: tuple[Accept, ...]
    notes: tuple[str, ...]
    end: Span  # where a finding about something that is nowhere in the file points to
    chosen_plugs: tuple[ChosenPlug, ...] = ()  # with the places that were chosen

    @cached_property
    def things(self) -> dict[str, Unit | Supply | MainsStrip | Instrument | Panel]:
        """Everything that has jacks or sockets, by name."""
        return {**self.instruments, **self.units, **self.supplies, **self.mains_strips, **self.panels}

    @cached_property
    def leads_into(self) -> dict[str, list[Connection]]:
        """What is connected to each thing, at the end that sound or a signal reaches last."""
        found: dict[str, list[Connection]] = {}
        for each in self.connections:
            found.setdefault(each.end.thing, []).append(each)
        return found

    @cached_property
    def deck(self) -> Deck | None:
        """The deck meant where a place names none."""
        return deck_meant(self.decks)

    def reserved_on(self, deck: Deck) -> tuple[Area, ...]:
        """The rooms that are reserved on a deck."""
        return tuple(
            room for room in self.reserved_rooms if (self.decks.get(room.deck) if room.deck else self.deck) is deck
        )

    def behind_strip(self, strip: str) -> tuple[str, ...]:
        """All that takes its mains from a strip: what is plugged into it, and into a strip that hangs on it."""
        return tuple(
            name
            for plug, into, _ in self.power.plugged
            if into == strip
            for name in (self.behind_strip(plug) if plug in self.mains_strips else (plug,))
        )

    def jack(self, port: Port) -> Jack | None:
        """The jack at a port; None for an outlet of a supply."""
        return self.things[port.thing].jack(port.jack)

    def chosen_plug(self, port: Port) -> ChosenPlug | None:
        """The plug that was chosen for a jack with a place, in place of the usual one."""
        return next((each for each in self.chosen_plugs if each.port == port), None)

    def limit(self, name: str) -> Limit | None:
        """The limit of that name that the source sets."""
        return next((limit for limit in self.head.limits if limit.name == name), None)
