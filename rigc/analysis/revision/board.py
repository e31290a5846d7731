"""Board: what hangs together of a rig, thing by thing, as far as a revision can change it by hand."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.lead_make import STRAIGHT, LeadMake
from rigc.analysis.leads.lead_plugs import appliance_inlets
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mounting.mounting_strip import MountingStrip, StrippedUnit
from rigc.analysis.mounting.strip_order import strip_length
from rigc.analysis.revision.plan.program_notes import preset_notes, song_notes
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class BoardLead(Record):
    """A lead: what is plugged in where, and what its labels say, start first.

    `length` is in whole tenths of a millimetre, None where not known. `ends` is None for a spare, which is plugged in
    nowhere. `via` names the adaptor at each end, empty where the end goes into the jack itself. A `captive` lead grows
    out of its unit; `leg_of` is the number of the Y lead whose leg it is. `make` is how its conductors are joined. `designed`
    is the length that its design gave it, which may be another one where it was measured. `inlets` are the kinds of the appliance inlets
    that a mains lead goes into.
    """

    mark: str
    signal: str
    ends: tuple[Port, Port] | None
    plugs: tuple[str | None, str | None]
    cable: str | None
    length: int | None
    labels: tuple[str, str]
    via: tuple[str, str] = ("", "")
    stage: bool = False
    captive: bool = False
    leg_of: str | None = None
    make: LeadMake = STRAIGHT
    designed: int | None = None
    inlets: tuple[str, ...] = ()

    @property
    def grows_from(self) -> Port | None:
        """The jack or outlet out of which a captive lead grows: at that end it has no plug."""
        if not self.captive or self.ends is None:
            return None
        return next((port for port, plug in zip(self.ends, self.plugs, strict=True) if plug is None), None)

    def is_as_long(self, need: BoardLead) -> bool:
        """Whether the lead that is needed is as long as this one is, or was designed to be: then nothing about its length changes."""
        return need.length in (self.length, self.designed)


class BoardAdaptor(Record):
    """A series, parallel, reversing or size adaptor, with the text of its label."""

    mark: str
    kind: str
    outlets: tuple[Port, ...]
    units: tuple[str, ...]
    label: str


class BoardUnit(Record):
    """A unit or supply; the place is None where the source states none. Lengths in mm, see `model.deck.Place`. `fixing` is how it is
    held beside strips: bolted, screwed or brackets."""

    name: str
    place: BoardPlace | None
    fixing: str | None = None


class BoardPlace(Record):
    """Where a thing stands: `model.deck.Place` without its words."""

    x_mm: float
    y_mm: float
    turned: int
    skew_deg: float
    under: bool
    tier: str | None
    deck: str | None


class BoardFeed(Record):
    """Where a unit takes its power; `volts` is the setting of each of its outlets."""

    unit: str
    outlets: tuple[Port, ...]
    volts: tuple[float, ...]
    how: str
    reversed: bool
    lower: Port | None = None


class BoardStrips(Record):
    """The strip under a unit, in mm: `pieces` on its base, `deck_pieces` on the deck or its rails."""

    unit: str
    strip: str
    pieces: tuple[float, ...]
    deck_pieces: tuple[float, ...]


class Board(Record):
    """All of it by name or number. `presets` and `songs` hold what each sets, a line a setting; `channels` the MIDI
    channel of each unit; `spares` how many of each thing are carried (`audio lead 1300 mm`); `y_labels` the text that
    each Y lead bears beside the labels of its legs."""

    leads: dict[str, BoardLead]
    adaptors: dict[str, BoardAdaptor]
    units: dict[str, BoardUnit]
    feeds: dict[str, BoardFeed]
    strips: dict[str, BoardStrips]
    presets: dict[int, tuple[str, ...]]
    songs: dict[str, tuple[str, ...]]
    channels: dict[str, int]
    spares: dict[str, int]
    y_labels: dict[str, str]


def board(
    rig: Rig,
    leads: Leads,
    lengths: CableLengths,
    labels: Labels,
    special: SpecialLeads,
    power: PowerAssignment,
    strips: MountingStrip,
) -> Board:
    """The board as designed."""
    marks = {lead.mark for lead in leads.all} | {lead.leg_of for lead in leads.all}
    adaptors = {
        each.mark: BoardAdaptor(each.mark, each.kind, each.outlets, each.units, each.label)
        for each in special.all
        if each.mark not in marks
    }
    return Board(
        {lead.mark: _lead(rig, lead, lengths, labels, adaptors) for lead in leads.all},
        adaptors,
        {name: BoardUnit(name, _place(rig, name), rig.mounting.fixing_of(name)) for name in _on_board(rig, power)},
        {
            feed.unit: BoardFeed(
                feed.unit, feed.outlets, _settings(power, feed.outlets), feed.how, feed.reversed, feed.lower
            )
            for feed in power.feeds
        },
        {each.thing: _strips(each) for each in strips.units},
        {preset.number: preset_notes(rig, preset) for preset in rig.presets.values()},
        {song.title: song_notes(song) for song in rig.songs},
        {channel.unit: channel.number for channel in rig.channels},
        _spares(rig),
        {each.mark: each.label for each in special.all if each.kind == "Y"},
    )


def _lead(rig: Rig, lead: Lead, lengths: CableLengths, labels: Labels, adaptors: dict[str, BoardAdaptor]) -> BoardLead:
    length = lengths.supplied_tenths(lead.mark)
    return BoardLead(
        lead.mark,
        lead.signal,
        (lead.start, lead.end),
        lead.ends,
        lead.cable,
        length,
        labels.texts[lead.mark],
        (_via(adaptors, lead.start, lead.end), _via(adaptors, lead.end, lead.start)),
        lead.stage,
        lead.captive is not None,
        lead.leg_of,
        lead.make,
        length,
        appliance_inlets(rig, lead.start, lead.end),
    )


def _via(adaptors: dict[str, BoardAdaptor], here: Port, far: Port) -> str:
    """The adaptor between this end and its unit; it is fed from the far end."""
    return next((each.mark for each in adaptors.values() if here.thing in each.units and far in each.outlets), "")


def _on_board(rig: Rig, power: PowerAssignment) -> dict[str, None]:
    """Units and supplies that are wired, feed, or have a place; amps and desks stand elsewhere."""
    used = [unit.name for unit in used_units(rig) if unit.kind == "unit"]
    supplies = [port.thing for port in power.loads]
    placed = [name for name in rig.places if name in rig.units or name in rig.supplies or name in rig.mains_strips]
    return dict.fromkeys((*used, *supplies, *placed))


def _place(rig: Rig, name: str) -> BoardPlace | None:
    place = rig.places.get(name)
    if place is None:
        return None
    deck = rig.decks.get(place.deck or "", rig.deck)
    named = None if deck is None else deck.name
    return BoardPlace(place.x_mm, place.y_mm, place.turned, place.skew_deg, place.under, place.tier, named)


def _settings(power: PowerAssignment, outlets: tuple[Port, ...]) -> tuple[float, ...]:
    return tuple(power.loads[port].volts for port in outlets if port in power.loads)


def _strips(each: StrippedUnit) -> BoardStrips:
    pieces = tuple(strip_length(piece, each.width_mm) for piece in each.deck_pieces)
    return BoardStrips(each.thing, each.strip, (float(each.piece_mm),) * each.count, pieces)


def _spares(rig: Rig) -> dict[str, int]:
    found: dict[str, int] = {}
    for spare in rig.spares:
        name = spare.what if spare.length_mm is None else f"{spare.what} {spare.length_mm.value:g} mm"
        found[name] = found.get(name, 0) + spare.count
    return found


COMPUTE = board
