"""Unit schedule: every fact that is stated of the things in use, but for their jacks, with where it comes from."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import spare_things, used_supplies
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.front.sheet_codes import see
from rigc.reports.schedule.decks import deck_table
from rigc.reports.schedule.jacks import spot_table
from rigc.reports.schedule.powering import needs_table, outlet_table, own_mains_table, supply_table
from rigc.reports.schedule.reels import cable_table, choice_table, plug_table, strip_table
from rigc.reports.schedule.sound import instrument_table, sound_table, source_table
from rigc.reports.schedule.things import thing_table

_READING = Paragraph(
    "reading",
    (
        "All of it is as stated in the source, in the units in which it was measured; what has no cell, or an empty one, was not stated. Compare it "
        "with the thing in your hand: another version, serial or voltage is another unit.",
        f"Jacks, with what each takes and gives: {see('unit-data-sheets')}.",
    ),
    heading="How to read it",
)


def unit_schedule(rig: Rig, leads: Leads, power: PowerAssignment) -> Sheet:
    """Things, sound, power, decks, and the stock that the leads and strips are made of."""
    units, supplies = used_units(rig), used_supplies(rig, power)
    reels = (
        *(lead.cable for lead in leads.all),
        *(each.lead_cable for each in rig.instruments.values()),
        *(each.plain_cable for each in rig.instruments.values()),
    )
    blocks = (
        _READING,
        thing_table(rig, (*units, *supplies, *rig.mains_strips.values()), spare_things(rig, power)),
        sound_table(units),
        instrument_table(rig) if any(each.kind == "instrument" for each in rig.instruments.values()) else None,
        source_table(rig),
        needs_table(units),
        own_mains_table(rig, units),
        supply_table(supplies) if supplies else None,
        outlet_table(supplies) if supplies else None,
        spot_table((*units, *supplies)),
        deck_table(rig) if rig.decks else None,
        choice_table(rig),
        cable_table(rig, reels),
        plug_table(rig, (plug for lead in leads.all for plug in lead.ends)),
        strip_table(rig, (rig.mounting.all_with, *(strip for _, strip in rig.mounting.strips))),
    )
    told = tuple(each for each in blocks if each is not None)
    return Sheet("unit-schedule", "Unit schedule", "builder, tech, whoever measures", told, landscape=True)


PLACE = 7
SHEET = unit_schedule
