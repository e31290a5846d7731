"""Wiring sheet: the page from which a tech plugs the board together."""

from __future__ import annotations

from rigc.analysis.control.preset_figures import PresetFigures
from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.deck.zones import Zones
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_volts import LeadVolts
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mains.radio_bands import RadioBands
from rigc.analysis.revision.rework import Rework
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.loading.first_section import FirstSection
from rigc.analysis.signal.phantom_ways import PhantomWays
from rigc.analysis.signal.signal_steps import SignalSteps
from rigc.model.rig import Rig
from rigc.reports.content import Sheet, Table
from rigc.reports.control.control_tables import control_table, midi_table, power_leads_table, preset_table
from rigc.reports.control.switch_settings import band_table, switch_table
from rigc.reports.front.cautions import care
from rigc.reports.revision.changed_rows import changed, marked
from rigc.reports.signal.first_buffer_tables import first_buffer_tables
from rigc.reports.signal.intents import intent_table
from rigc.reports.signal.loop_table import loops_note
from rigc.reports.signal.mains_plugs import mains_plug_table
from rigc.reports.signal.meeting_ways import join_table
from rigc.reports.signal.phantom_table import phantom_table
from rigc.reports.signal.remarks import bypass_plan, crew_notes
from rigc.reports.signal.signal_tables import signal_tables


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
    zones: Zones,
    rework: Rework,
) -> Sheet:
    """Signal order chain by chain, other leads, presets, loading, and what the crew must know."""
    new = changed(rework)
    signs = {"unit": new.units, "lead": new.leads, "at": new.outlets}
    return Sheet(
        name="wiring-sheet",
        title="Wiring sheet",
        reader="the tech who plugs the board together",
        blocks=(
            care("wiring-sheet", rig, power, "before you plug in", "cautions"),
            crew_notes(rig),
            bypass_plan(rig),
            *(
                each
                for each in (
                    _switches(settings, zones, signs),
                    phantom_table(phantom),
                    band_table(bands),
                    join_table(rig),
                )
                if each is not None
            ),
            *(marked(table, signs) for table in signal_tables(rig, steps.chains, levels, zones)),
            *(each for each in (loops_note(rig), intent_table(rig)) if each is not None),
            *(
                marked(table, signs)
                for table in (
                    power_leads_table(rig, leads, power, special, volts, zones),
                    midi_table(rig, leads, zones),
                    control_table(rig, leads, zones),
                )
            ),
            *(each for each in (mains_plug_table(rig),) if each is not None),
            preset_table(rig, presets),
            *first_buffer_tables(first),
        ),
        landscape=True,
    )


def _switches(settings: SwitchSettings, zones: Zones, signs: dict[str, dict[str, str]]) -> Table | None:
    table = switch_table(settings, zones)
    return None if table is None else marked(table, signs)


PLACE = 3
SHEET = wiring_sheet
