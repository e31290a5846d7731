"""Mains sheet: what supplies take, where the rig plays, what to set there."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primaries import Primaries
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Unit
from rigc.reports.content import NoSheet, Sheet
from rigc.reports.front.cautions import care
from rigc.reports.mains.fuse_table import fuse_table
from rigc.reports.mains.notes import notes
from rigc.reports.mains.places import place_table
from rigc.reports.mains.settings import setting_table
from rigc.reports.mains.strips import strip_table
from rigc.reports.mains.supplies import supply_table


def mains_sheet(
    rig: Rig, power: PowerAssignment, loads: MainsLoads, primaries: Primaries, fuses: Fuses
) -> Sheet | NoSheet:
    """The sheet only totals: it designs no mains wiring. What is not known is told as such."""
    if not _is_there(rig, loads):
        return NoSheet("mains-sheet", "Mains sheet", "Nothing in it is stated to take mains.")
    more = (fuse_table(fuses), strip_table(rig, loads))
    return Sheet(
        "mains-sheet",
        "Mains sheet",
        "crew",
        (
            care("mains-sheet", rig, power, name="cautions"),
            place_table(rig, loads),
            setting_table(rig, primaries),
            supply_table(rig, loads),
            *(each for each in more if each is not None),
            notes(rig, power, loads, fuses),
        ),
        landscape=True,
    )


def _is_there(rig: Rig, loads: MainsLoads) -> bool:
    """Whether anything is plugged into the mains: a supply, a strip, what ends a chain, or what has an inlet of its own."""
    if loads.all or rig.mains_strips:
        return True
    things: tuple[Unit | Instrument, ...] = (*used_units(rig), *rig.instruments.values())
    jacks = (jack for thing in (*things, *rig.panels.values()) for jack in thing.jacks)
    return any(thing.may_be_earthed for thing in things) or any(jack.takes_mains for jack in jacks)


PLACE = 2
SHEET = mains_sheet
