"""A unit -> the leads, outlets, presets and songs that a change of it touches."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset, Song
from rigc.record import Record


class Touched(Record):
    """All that hangs on a unit; `feed` is None where no outlet feeds it."""

    leads: tuple[Lead, ...]
    feed: Supplied | None
    presets: tuple[Preset, ...]
    songs: tuple[Song, ...]


def touched(rig: Rig, leads: Leads, power: PowerAssignment, unit: str) -> Touched:
    """A preset is touched that names the unit, or a loop that holds it; a song that plays such a preset or sets its knobs."""
    held = {(loop.switcher, loop.number) for loop in rig.loops if unit in {stop.thing for stop in loop.stops}}
    presets = tuple(preset for preset in rig.presets.values() if _names(rig, preset, unit, held))
    numbers = {preset.number for preset in presets}
    return Touched(
        tuple(lead for lead in leads.all if unit in (lead.start.thing, lead.end.thing)),
        power.of(unit),
        presets,
        tuple(song for song in rig.songs if song.preset in numbers or unit in {thing for thing, _, _ in song.settings}),
    )


def _names(rig: Rig, preset: Preset, unit: str, held: set[tuple[str, int]]) -> bool:
    named = {name for name, _ in (*preset.on, *preset.off, *preset.floors)} | {name for name, _, _ in preset.programs}
    loops = {(switcher, number) for switcher, number, _ in preset_loops(rig, preset)}
    return unit in named or bool(held & loops)
