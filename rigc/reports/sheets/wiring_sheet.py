"""Wiring sheet: the page from which a tech plugs the board together."""

from __future__ import annotations

from rigc.analysis.computations.first_section import FirstSection
from rigc.analysis.computations.lead_volts import LeadVolts
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.levels import Levels
from rigc.analysis.computations.phantom_ways import PhantomWays
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.preset_figures import PresetFigures
from rigc.analysis.computations.radio_bands import RadioBands
from rigc.analysis.computations.signal_steps import SignalSteps
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.computations.switch_settings import SwitchSettings
from rigc.model.rig import Rig
from rigc.reports.content import Sheet
from rigc.reports.wiring.control_tables import control_table, midi_table, power_leads_table, preset_table
from rigc.reports.wiring.first_buffer_tables import first_buffer_tables
from rigc.reports.wiring.intents import intent_table
from rigc.reports.wiring.joins import join_table
from rigc.reports.wiring.loop_table import loop_table
from rigc.reports.wiring.mains_plugs import mains_plug_table
from rigc.reports.wiring.phantom_table import phantom_table
from rigc.reports.wiring.remarks import bypass_plan, cautions, crew_notes
from rigc.reports.wiring.settings import band_table, switch_table
from rigc.reports.wiring.signal_tables import signal_tables


def wiring_sheet(
    rig: Rig,
    steps: SignalSteps,
    leads: Leads,
    power: PowerAssignment,
    special: SpecialLeads,
    first: FirstSection,
    settings: SwitchSettings,
    bands: RadioBands,
    levels: Levels,
    phantom: PhantomWays,
    presets: PresetFigures,
    volts: LeadVolts,
) -> Sheet:
    """Signal order chain by chain, loops, other leads, presets, loading, and what the crew must know."""
    return Sheet(
        name="wiring-sheet",
        title="Wiring sheet",
        reader="the tech who plugs the board together",
        blocks=(
            cautions(rig, power),
            crew_notes(rig),
            bypass_plan(rig),
            *(
                each
                for each in (switch_table(settings), phantom_table(phantom), band_table(bands), join_table(rig))
                if each is not None
            ),
            *signal_tables(rig, steps.chains, levels),
            loop_table(rig, leads),
            *(each for each in (intent_table(rig),) if each is not None),
            power_leads_table(rig, leads, power, special, volts),
            midi_table(rig, leads),
            control_table(rig, leads),
            *(each for each in (mains_plug_table(rig),) if each is not None),
            preset_table(rig, presets),
            *first_buffer_tables(first),
        ),
        landscape=True,
    )


SHEET = wiring_sheet
