"""MIDI and control map: who listens on which channel, by which leads, and what each contact carries."""

from __future__ import annotations

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.rig import Rig
from rigc.reports.content import NoSheet, Sheet
from rigc.reports.control.control_leads import control_leads_table
from rigc.reports.control.midi_tables import link_table, map_table
from rigc.reports.control.notes import timing
from rigc.reports.front.cautions import care


def midi_and_control_map(
    rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths, control: ControlMap
) -> Sheet | NoSheet:
    """MIDI by unit, MIDI lead by lead, expression and switch leads, figures, cautions."""
    name, title = "midi-and-control-map", "MIDI and control map"
    tables = (map_table(rig, control), link_table(rig, control), control_leads_table(rig, leads, lengths))
    if not any(table.rows for table in tables):
        return NoSheet(name, title, "No MIDI and no control lead is stated for this rig.")
    midi = (timing(rig, control),) if any(table.rows for table in tables[:2]) else ()
    blocks = (*tables, *midi, care(name, rig, power, name="caution_control"))
    return Sheet(name, title, "the programmer, the tech", blocks, landscape=True)


PLACE = 7
SHEET = midi_and_control_map
