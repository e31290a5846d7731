"""Preset sheet: what each song needs: preset, loops, programs, tempo, tuning, knobs."""

from __future__ import annotations

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.preset_figures import PresetFigures
from rigc.model.rig import Rig
from rigc.reports.content import NoSheet, Sheet
from rigc.reports.control.clock_faces import clock_faces
from rigc.reports.control.preset_tables import knob_table, program_table, song_table


def preset_sheet(rig: Rig, control: ControlMap, presets: PresetFigures) -> Sheet | NoSheet:
    """Songs with their presets, knob settings with their clock faces, program numbers as shown and as sent."""
    name, title = "preset-sheet", "Preset sheet"
    if not rig.songs and not rig.presets:
        return NoSheet(name, title, "No preset and no song is stated.")
    faces = tuple(clock_faces(song, number) for number, song in enumerate(rig.songs, 1) if song.settings)
    return Sheet(
        name,
        title,
        "the player, the tech",
        (song_table(rig, presets), *faces, knob_table(rig), program_table(rig, control)),
        landscape=True,
    )


PLACE = 5
SHEET = preset_sheet
