"""Jacks: where a lead can be plugged, and what it meets there."""

from __future__ import annotations

from typing import NamedTuple

from rigc.model.fact import Quantity
from rigc.record import Record
from rigc.source import Span

AUDIO_IN, AUDIO_OUT = "input", "output"


class Port(NamedTuple):
    """A jack of a thing, by their names. It is a tuple because every graph and table is keyed by ports, some hundred times a unit."""

    thing: str
    jack: str

    def __str__(self) -> str:
        return f"{self.thing}.{self.jack}"


class Connector(Record):
    """A kind of connector: `ts`, `trs`, `mini-trs`, `din`, `xlr`, `wireless`, `barrel` (with its size in mm), `mini-jack`,
    `snap`, `usb`, `terminal` or an appliance inlet's number (`C14`)."""

    kind: str
    outer_mm: float | None = None
    inner_mm: float | None = None

    @property
    def is_appliance(self) -> bool:
        """Whether it is an inlet for a mains lead."""
        return self.kind[:1].isupper()

    def __str__(self) -> str:
        if self.outer_mm is None or self.inner_mm is None:
            return self.kind
        return f"{self.kind} {self.outer_mm:g} × {self.inner_mm:g}"


class Levels(Record):
    """What a jack gives or takes, in dBu."""

    nominal_dbu: Quantity | None = None
    peak_dbu: Quantity | None = None
    maximum_dbu: Quantity | None = None
    sensitivity_dbu: Quantity | None = None


class Phantom(Record):
    """Phantom power at a jack. `how`: it `gives` or `needs` so many volts, `bears` them, must `never` get them, or has `none`
    to give."""

    how: str
    volts: Quantity | None
    span: Span


class Jack(Record):
    """A jack of a thing.

    `role` is `input`, `output` (audio), `inlet` (power), `midi in`, `midi out`, `midi thru`, `expression in`, `expression out`,
    `control in`, `control out`, `usb` or `panel` (both sides of a panel jack). `side` is left, right, front or rear in the thing's
    own unturned orientation; `offset_mm` counts from its front edge (left, right) or its left edge (front, rear), `height_mm`
    from its base without feet. `taper` is that of an expression jack's track: `linear`, `log` or `reverse-log`; None where
    not said.
    `lift` is the position in which its ground lift leaves its maker: `open`, `closed`, `unknown`; None where it has none.
    """

    name: str
    role: str
    connector: Connector
    span: Span
    side: str | None = None
    offset_mm: Quantity | None = None
    height_mm: Quantity | None = None
    bushing: str | None = None
    impedance_ohm: Quantity | None = None
    bypassed_ohm: Quantity | None = None
    carries: str | None = None
    levels: Levels = Levels()
    captive_mm: Quantity | None = None
    wiper: str | None = None
    track_ohm: Quantity | None = None
    midi_form: str | None = None
    contact: str | None = None
    taper: str | None = None
    phantom: Phantom | None = None
    lift: str | None = None

    @property
    def audio(self) -> bool:
        """Whether sound goes through it."""
        return self.role in (AUDIO_IN, AUDIO_OUT, "panel")

    @property
    def takes_mains(self) -> bool:
        """Whether it is an appliance inlet."""
        return self.connector.is_appliance


class LoopJacks(Record):
    """The two jacks of one loop. `mix` is how an amp's own loop joins: `series` or `parallel`."""

    number: int
    send: str
    back: str
    mix: str | None
    span: Span


class InternalPath(Record):
    """A path inside a unit and how it joins: straight, transformer, transformer lifted, buffer."""

    start: str
    end: str
    how: str
    span: Span
