"""What a preset or a song sets, a line a setting: to compare two revisions by, and to print."""

from __future__ import annotations

from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset, Song


def preset_notes(rig: Rig, preset: Preset) -> tuple[str, ...]:
    """Its loops, units on and off, programs, switch lines, floors and tempo; titles and remarks set nothing."""
    lines = [f"loop {number} of {switcher or '?'}" for switcher, number, _ in preset_loops(rig, preset)]
    lines += [f"{name} on" for name, _ in preset.on] + [f"{name} off" for name, _ in preset.off]
    lines += [f"program {number} on {name}" for name, number, _ in preset.programs]
    lines += [line.words for line in preset.lines]
    lines += [f"floor {plain(floor.value)} % on {name}" for name, floor in preset.floors]
    lines += [] if preset.tempo_bpm is None else [f"tempo {plain(preset.tempo_bpm.value)} bpm"]
    return tuple(lines)


def song_notes(song: Song) -> tuple[str, ...]:
    """Its preset, tempo, tuning and knobs."""
    lines = [] if song.preset is None else [f"preset {song.preset}"]
    lines += [] if song.tempo_bpm is None else [f"tempo {plain(song.tempo_bpm.value)} bpm"]
    lines += [f"tuning {song.tuning}"] if song.tuning else []
    lines += [f"{unit} {knob} at {hour} oclock" for unit, knob, hour in song.settings]
    return tuple(lines)
