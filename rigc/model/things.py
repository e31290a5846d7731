"""Things: what stands on a board or is joined to it (units, amps, desks, supplies, instruments, panels)."""

from __future__ import annotations

from rigc.model.fact import Choice, Fact, Quantity
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Connector, InternalPath, Jack, LoopJacks
from rigc.model.units.measures import (
    CAPACITANCE,
    CURRENT,
    GAIN,
    INDUCTANCE,
    LATENCY,
    MASS,
    NOTE,
    STARTS,
    TRACK_OHM,
    WARM,
    WINDING_OHM,
)
from rigc.record import Record
from rigc.source import Span

MEASURED = {
    "mass_kg": MASS, "warm_w": WARM, "gain_db": GAIN, "draws_ma": CURRENT, "starts_ma": STARTS, "latency_ms": LATENCY,
    "track_ohm": TRACK_OHM, "inductance_h": INDUCTANCE, "resistance_ohm": WINDING_OHM, "capacitance_pf": CAPACITANCE,
    "lowest_note_hz": NOTE,
}  # fmt: skip
"""By which measure a field is read whose statement is one amount: `latency_ms` that of `latency 3 ms`."""

ENDS = ("amp", "desk", "listener")
"""The kinds of units at which sound ends."""


FUSES = {"FF": "very quick", "F": "quick", "M": "medium", "T": "slow", "TT": "very slow"}
"""The characteristics of fuses (IEC 60127, from memory)."""


class Area(Record):
    """A rectangle on a thing's base or on a deck, in mm; `what` names it (`battery-door`, `handle`). `chosen`: the compiler chose where
    it lies. `deck` is the one on which a room is reserved, None where the source names none."""

    what: str
    x_mm: float
    y_mm: float
    width_mm: float
    depth_mm: float
    span: Span
    chosen: bool = False
    deck: str | None = None

    @property
    def room(self) -> Rectangle:
        """What it covers."""
        return Rectangle(self.x_mm, self.y_mm, self.width_mm, self.depth_mm)


class Spot(Record):
    """A foot switch or a knob, in mm from the thing's front-left corner; `action` is latching, momentary or None."""

    name: str
    x_mm: float
    y_mm: float
    action: str | None
    span: Span


class Fuse(Record):
    """A fuse that stands in a thing: the letters of its characteristic (IEC 60127, from memory), empty where it has none, its rating in
    mA, diameter and length in mm, the mains in V at which it is the right one (None: at all), and what else is marked on it."""

    kind: str
    rating_ma: Quantity
    size_mm: tuple[float, float] | None
    at_v: Quantity | None
    marked: str
    span: Span

    @property
    def words(self) -> str:
        """`T 630 mA, 5 × 20 mm, H 250 V`."""
        size = "" if self.size_mm is None else f"{self.size_mm[0]:g} × {self.size_mm[1]:g} mm"
        return ", ".join(filter(None, (f"{self.kind} {self.rating_ma.typed}".strip(), size, self.marked)))


class Paperwork(Record):
    """What insurance, customs and the crew want to know of a thing."""

    version: Choice | None = None
    fitted: Choice | None = None
    firmware: Choice | None = None
    serial: Choice | None = None
    owner: Choice | None = None
    insured: Fact[str] | None = None
    origin: Choice | None = None
    price: Fact[str] | None = None


class Thing(Record):
    """What units, amps, desks and supplies have in common. `kind` is the word that declares it."""

    kind: str
    name: str
    title: str
    declared: Span
    width_mm: Quantity | None = None
    depth_mm: Quantity | None = None
    height_mm: Quantity | None = None
    mass_kg: Quantity | None = None
    jacks: tuple[Jack, ...] = ()
    pairs: tuple[tuple[str, str], ...] = ()
    loops: tuple[LoopJacks, ...] = ()
    flags: frozenset[str] = frozenset()
    feet: Choice | None = None
    base: Choice | None = None
    switches: tuple[Spot, ...] = ()
    knobs: tuple[Spot, ...] = ()
    treadle_mm: tuple[float, float] | None = None
    no_tape: tuple[Area, ...] = ()
    vents: tuple[str, ...] = ()
    warm_w: Quantity | None = None
    gain_db: Quantity | None = None
    band_mhz: tuple[float, float] | None = None
    band_countries: tuple[str, ...] = ()
    fuses: tuple[Fuse, ...] = ()
    papers: Paperwork = Paperwork()
    was: str | None = None
    was_at: Span | None = None
    stands_in: str | None = None
    stands_in_at: Span | None = None
    notes: tuple[str, ...] = ()

    def jack(self, name: str) -> Jack | None:
        """The jack of that name."""
        for jack in self.jacks:  # asked more often than anything else
            if jack.name == name:
                return jack
        return None

    def loop(self, number: int) -> LoopJacks | None:
        """The loop of that number."""
        return next((loop for loop in self.loops if loop.number == number), None)


class Battery(Record):
    """The battery a unit runs on; `only` where it has no other supply."""

    kind: str
    capacity_mah: Quantity | None
    only: bool
    span: Span


class Unit(Thing):
    """A unit, amp, desk or other listener. `volts` and `current` (`dc`, `ac`) are what it needs; None where the source does not say.
    `track_ohm` is the track of a volume treadle; `mains` holds one range a selector position of what has a mains lead of its own, and `takes_va` or
    `takes_w` what it takes of it: as its plate says, the one or the other."""

    volts: Quantity | None = None
    current: str | None = None
    accepts_low_v: Quantity | None = None
    accepts_high_v: Quantity | None = None
    polarity: Choice | None = None
    draws_ma: Quantity | None = None
    starts_ma: Quantity | None = None
    ground: Choice | None = None
    battery: Battery | None = None
    bypass: Choice | None = None
    unpowered: Choice | None = None
    latency_ms: Quantity | None = None
    paths: tuple[InternalPath, ...] = ()
    track_ohm: Quantity | None = None
    clock: str | None = None
    earth: str | None = None
    role: str | None = None
    mains: tuple[MainsRange, ...] = ()
    takes_va: Quantity | None = None
    takes_w: Quantity | None = None

    @property
    def ends(self) -> bool:
        """Whether sound ends there: it is an amp, a desk or another listener."""
        return self.kind in ENDS

    @property
    def own_mains(self) -> bool:
        """Whether it is a unit with a mains lead of its own, such as one of a rack or a valve preamp."""
        stated = bool(self.mains) or self.takes_va is not None or self.takes_w is not None or self.earth is not None
        return not self.ends and (stated if self.inlet is None else self.inlet.takes_mains)

    @property
    def may_be_earthed(self) -> bool:
        """Whether it has to say how it is earthed: what takes mains itself does, unless it is worn on the head."""
        return ((self.ends and "headphones" not in self.flags) or self.own_mains) and not self.on_battery

    @property
    def on_battery(self) -> bool:
        """Whether it runs on its battery and nothing else."""
        return self.battery is not None and self.battery.only

    @property
    def inlet(self) -> Jack | None:
        """Its power inlet."""
        return next((jack for jack in self.jacks if jack.role == "inlet"), None)

    @property
    def powered(self) -> bool:
        """Whether it takes power from an outlet."""
        return self.inlet is not None and not self.inlet.takes_mains and not self.on_battery


class Rating(Record):
    """One setting of an outlet: `volts` V of kind `dc` or `ac`, up to `milliamps` mA."""

    volts: Quantity
    current: str
    milliamps: Quantity
    span: Span


class Outlet(Record):
    """An outlet of a supply. `common` names the group that shares one return; None where it is isolated.

    The first rating is the one at which it leaves its maker. `captive_mm` is the length of a lead that grows out of it: its
    connector is the plug at that lead's end.
    """

    name: str
    ratings: tuple[Rating, ...]
    common: str | None
    connector: Connector | None
    polarity: str | None
    side: str | None
    offset_mm: Quantity | None
    height_mm: Quantity | None
    span: Span
    captive_mm: Quantity | None = None


class Pack(Record):
    """The battery from which a supply gives: its energy in Wh, or its charge in mAh with the voltage of its cells; `only` where the supply
    takes no mains."""

    kind: str
    energy_wh: Quantity | None
    charge_mah: Quantity | None
    cells_v: Quantity | None
    only: bool
    span: Span


class PlugTop(Record):
    """The mains plug that a supply's body is: the letter of its type (IEC World Plugs); empty where it is not said."""

    pins: str
    span: Span


class MainsRange(Record):
    """A voltage and frequency range in V and Hz, the tolerance already applied; the frequency None where not said."""

    low_v: float
    high_v: float
    hertz_low: float | None
    hertz_high: float | None
    typed: str
    span: Span

    @property
    def middle_v(self) -> float:
        """The middle of its voltages: what a transformer's windings are laid out for."""
        return (self.low_v + self.high_v) / 2


class Supply(Thing):
    """A supply. `ceiling_w` or `ceiling_ma` is the most that all outlets together give; mains holds one range a selector position."""

    technology: str | None = None
    mains: tuple[MainsRange, ...] = ()
    core_hz: Quantity | None = None
    ceiling_w: Quantity | None = None
    ceiling_ma: Quantity | None = None
    outlets: tuple[Outlet, ...] = ()
    efficiency: Quantity | None = None
    power_factor: float | None = None
    minus_earthed: bool = False
    pack: Pack | None = None
    plug_top: PlugTop | None = None

    @property
    def takes_mains(self) -> bool:
        """Whether it takes mains while the rig plays: not where it gives from its battery only."""
        return self.pack is None or not self.pack.only

    def outlet(self, name: str) -> Outlet | None:
        """The outlet of that name."""
        for outlet in self.outlets:
            if outlet.name == name:
                return outlet
        return None


class MainsStrip(Thing):
    """A strip of mains sockets, bought as it is; `cord_mm` is the length of its own mains lead."""

    sockets: int | None = None
    cord_mm: Quantity | None = None


class Instrument(Record):
    """An instrument, or another source (`kind`): a keyboard, a microphone, a line source, which its `flags` tell.

    Lengths in mm, H, ohm and pF; a setting in percent (None: full up). A source has no pickup: it drives its leads itself.
    `battery` is the one in it or in its body-pack, and `draws_ma` what is drawn of that. `mains` and `takes_va` or `takes_w` as of a unit.
    """

    name: str
    title: str
    declared: Span
    inductance_h: Quantity | None = None
    resistance_ohm: Quantity | None = None
    capacitance_pf: Quantity | None = None
    volume_ohm: Quantity | None = None
    volume_setting: Quantity | None = None
    tone_ohm: Quantity | None = None
    tone_nf: Quantity | None = None
    tone_setting: Quantity | None = None
    lead_mm: Quantity | None = None
    lead_cable: str | None = None
    plain_mm: Quantity | None = None
    plain_cable: str | None = None
    active: bool = False
    lowest_note_hz: Quantity | None = None
    mass_kg: Quantity | None = None
    battery: Battery | None = None
    draws_ma: Quantity | None = None
    mains: tuple[MainsRange, ...] = ()
    takes_va: Quantity | None = None
    takes_w: Quantity | None = None
    fuses: tuple[Fuse, ...] = ()
    papers: Paperwork = Paperwork()
    earth: str | None = None
    jacks: tuple[Jack, ...] = ()
    pairs: tuple[tuple[str, str], ...] = ()
    loops: tuple[LoopJacks, ...] = ()
    flags: frozenset[str] = frozenset()
    notes: tuple[str, ...] = ()
    kind: str = "instrument"

    @property
    def has_ground(self) -> bool:
        """Whether its ground counts by itself: a guitar's is only that of its lead."""
        return self.kind == "source"

    @property
    def may_be_earthed(self) -> bool:
        """Whether it has to say how it is earthed: a microphone has no mains."""
        return self.has_ground and "microphone" not in self.flags

    @property
    def on_battery(self) -> bool:
        """Whether it runs on its battery and nothing else."""
        return self.battery is not None and self.battery.only

    def jack(self, name: str) -> Jack | None:
        """The jack of that name."""
        return next((jack for jack in self.jacks if jack.name == name), None)


class Panel(Record):
    """A jack panel: its jacks lie at points of the deck."""

    name: str
    title: str
    declared: Span
    deck: str | None
    jacks: tuple[PanelJack, ...]
    pairs: tuple[tuple[str, str], ...]
    mass_kg: Quantity | None
    papers: Paperwork = Paperwork()
    loops: tuple[LoopJacks, ...] = ()
    flags: frozenset[str] = frozenset()
    notes: tuple[str, ...] = ()

    @property
    def kind(self) -> str:
        """The word that declares it."""
        return "panel"

    def jack(self, name: str) -> PanelJack | None:
        """The jack of that name."""
        return next((jack for jack in self.jacks if jack.name == name), None)


class PanelJack(Jack):
    """A jack of a panel, at a point of the deck in mm."""

    x_mm: float = 0.0
    y_mm: float = 0.0


UNITS = ("unit", "amp", "desk", "listener")
"""The words that declare a `Unit`."""

AnyThing = Unit | Supply | Instrument | Panel
"""What a chain may name."""
