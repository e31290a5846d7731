"""MIDI, control and power connections, presets -> the tables of what else is plugged."""

from __future__ import annotations

from rigc.analysis.control.preset_figures import PresetFigures
from rigc.analysis.deck.zones import Zones
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_make import adaptor_word
from rigc.analysis.leads.lead_volts import LeadVolts
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.special_leads import SpecialLead, SpecialLeads
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.model.wishes import Preset
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.control.preset_tables import floor_cell, preset_cells
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell
from rigc.reports.power.cells import polarity_mark

_MADE = Column("how the lead is made", key="made", folds="{}")
MIDI = (Column("lead"), Column("from"), Column("to"), ZONE, _MADE, Column("channel"))
CONTROL = (Column("lead"), Column("from"), Column("to"), ZONE, _MADE, Column("kind"))
POWER = (
    Column("lead"),
    Column("from outlet"),
    Column("to inlet"),
    ZONE,
    Column("set to", "V", number=True, folds="{}"),
    Column("AC/DC", folds="{}"),
    _MADE,
    Column("note", folds="{}"),
)
PRESETS = (
    Column("preset", number=True),
    Column("title"),
    Column("loops on"),
    Column("units on", folds="on: {}"),
    Column("units off", folds="off: {}"),
    Column("programs"),
    Column("switch lines", key="lines"),
    Column("volume floor"),
    Column("tempo", "bpm", number=True),
)


def midi_table(rig: Rig, leads: Leads, zones: Zones) -> Table:
    """MIDI leads with the channel on which the far end listens; then units that listen without a lead of their own."""
    channels = {channel.unit: channel for channel in rig.channels}
    told = {
        name: f"{each.number}{'' if each.first is None else f', programs from {each.first}'}"
        for name, each in channels.items()
    }
    mine = [lead for lead in leads.all if lead.signal == "midi"]
    rows = [_ends(lead, told.get(lead.end.thing, ""), zones) for lead in mine]
    fed = {lead.end.thing for lead in mine}
    rows += [_unwired(name, words, zones) for name, words in told.items() if name not in fed]
    master = f", master {rig.midi_master}" if rig.midi_master else ""
    return zoned(Table("midi", f"MIDI{master}", MIDI, tuple(rows), empty="", tick=bool(rows)))


def control_table(rig: Rig, leads: Leads, zones: Zones) -> Table:
    """Expression treadles, switch lines and USB leads."""
    rows = tuple(_ends(lead, _kind(rig, lead), zones) for lead in leads.all if lead.signal in ("control", "usb"))
    return zoned(Table("control", "Control", CONTROL, rows, empty="", tick=bool(rows)))


def power_leads_table(
    rig: Rig, leads: Leads, power: PowerAssignment, special: SpecialLeads, volts: LeadVolts, zones: Zones
) -> Table:
    """Power leads in brief, and the Y leads and adaptors that they are or go into; the power table has the figures."""
    rows = [_fed(rig, lead, volts, zones) for lead in leads.all if lead.signal in ("dc", "ac")]
    rows += [_special(rig, power, each, volts, zones) for each in special.all if not each.itself]
    return zoned(Table("power_leads", "Power leads", POWER, tuple(rows), empty="no power leads", tick=bool(rows)))


def _fed(rig: Rig, lead: Lead, volts: LeadVolts, zones: Zones) -> Row:
    unit = rig.units.get(lead.end.thing)
    stated, mark = None, ""
    if unit is not None and lead.make.current == "dc":
        stated, mark = unit.polarity, polarity_mark(unit.polarity, unit.current)
    pole = "" if stated is None else stated.value
    return Row(
        (
            Cell(lead.mark, strong=True),
            Cell(str(lead.start)),
            Cell(str(lead.end)),
            Cell(zones.ends(lead.start, lead.end)),
            figure_cell(volts.all.get(lead.mark), strong=lead.make.settable, lacking=""),
            Cell(lead.make.current.upper(), strong=lead.make.current == "ac"),
            _made(lead),
            Cell(", ".join(filter(None, (pole, _captive(lead)))), mark=mark),
        )
    )


def _captive(lead: Lead) -> str:
    """A lead that grows out of its brick or its unit is not looked for in the bag."""
    if lead.captive is None:
        return ""
    length = "" if lead.captive_mm is None else f", {lead.captive_mm.typed}"
    return f"captive at {lead.captive.thing}{length}"


def _special(rig: Rig, power: PowerAssignment, each: SpecialLead, volts: LeadVolts, zones: Zones) -> Row:
    feed, unit = power.of(each.units[0]), rig.units.get(each.units[0])
    pole = None if unit is None or unit.current == "ac" else unit.polarity
    parts = f"legs {', '.join(each.leads)}" if each.kind == "Y" else f"behind {', '.join(each.leads) or 'no lead'}"
    return Row(
        (
            Cell(each.mark, strong=True),
            Cell(", ".join(map(str, each.outlets)) or "?"),
            Cell(", ".join(each.units)),
            Cell(zones.feed(each.outlets, each.inlets)),
            figure_cell(volts.all.get(each.mark), lacking=""),
            Cell("" if feed is None else feed.current.upper()),
            Cell(f"{each.kind} {adaptor_word(each.kind)}: {parts}", strong=True),
            Cell("polarity turned" if each.kind == "reversing" else "" if pole is None else pole.value),
        )
    )


def _made(lead: Lead) -> Cell:
    return Cell(lead.make.words or "straight", strong=lead.make.special)


def preset_table(rig: Rig, figures: PresetFigures) -> Table:
    """Presets in brief, in the order of the source."""
    rows = tuple(_preset(rig, preset, figures) for preset in rig.presets.values())
    return Table("presets", "Presets in brief", PRESETS, rows, empty="")


def _ends(lead: Lead, last: str, zones: Zones) -> Row:
    ends = (Cell(str(lead.start)), Cell(str(lead.end)), Cell(zones.ends(lead.start, lead.end)))
    return Row((Cell(lead.mark, strong=True), *ends, _made(lead), Cell(last)))


def _unwired(name: str, last: str, zones: Zones) -> Row:
    return Row((Cell(""), Cell(""), Cell(name), Cell(zones.thing(name)), Cell(""), Cell(last)))


def _kind(rig: Rig, lead: Lead) -> str:
    """What the two jacks say: `expression, tip-wiper, 10 kΩ` or the contact of a switch line."""
    if lead.signal == "usb":
        return "USB"
    ends = [jack for jack in (rig.jack(lead.start), rig.jack(lead.end)) if jack is not None]
    wipers = dict.fromkeys(jack.wiper for jack in ends if jack.wiper)
    tracks = dict.fromkeys(f"{decimals(jack.track_ohm.value / 1000)} kΩ" for jack in ends if jack.track_ohm is not None)
    contacts = dict.fromkeys(jack.contact for jack in ends if jack.contact)
    kind = "expression" if ends and ends[-1].role.startswith("expression") else "switch line"
    return ", ".join((kind, *filter(None, (" to ".join(wipers), *contacts, *tracks))))


def _preset(rig: Rig, preset: Preset, figures: PresetFigures) -> Row:
    return Row(
        (
            figure_cell(figures.numbers[preset.number]),
            *preset_cells(rig, preset),
            floor_cell(preset),
            figure_cell(figures.tempos.get(preset.number), lacking=""),
        )
    )
