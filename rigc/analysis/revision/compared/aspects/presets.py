"""Presets and songs: what the player's feet and hands set."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.words import NONE, exact, words
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset, Song


def presets(rig: Rig) -> Iterator[Aspect]:
    """A song is known by its title."""
    for preset in rig.presets.values():
        name = str(preset.number)
        yield Aspect("preset", name, "", preset.title or "no title", True, DESIGN, span=preset.span)
        for field, text in _preset(rig, preset):
            yield Aspect("preset", name, field, text, text, DESIGN, span=preset.span)
    for song in rig.songs:
        yield Aspect("song", song.title, "", "" if song.preset is None else f"preset {song.preset}", True, DESIGN)
        for field, value in _song(song):
            yield Aspect("song", song.title, field, words(value), exact(value), DESIGN, span=song.span)


def _preset(rig: Rig, preset: Preset) -> Iterator[tuple[str, str]]:
    yield "title", preset.title or NONE
    yield (
        "loops on",
        ", ".join(f"{number} of {box}" if box else f"{number}" for box, number, _ in preset_loops(rig, preset)) or NONE,
    )
    yield "on", ", ".join(unit for unit, _ in preset.on) or NONE
    yield "off", ", ".join(unit for unit, _ in preset.off) or NONE
    yield "programs", ", ".join(f"{program} on {unit}" for unit, program, _ in preset.programs) or NONE
    yield "switch lines", "; ".join(line.words for line in preset.lines) or NONE
    yield "floors", ", ".join(f"{floor.typed} on {unit}" for unit, floor in preset.floors) or NONE
    yield "tempo", words(preset.tempo_bpm)
    yield "notes", words(preset.notes)


def _song(song: Song) -> Iterator[tuple[str, object]]:
    yield "preset", song.preset
    yield "tempo", song.tempo_bpm
    yield "tuning", song.tuning
    yield "settings", tuple(f"{knob} of {unit} at {hour} o'clock" for unit, knob, hour in song.settings)
    yield "notes", song.notes


ASPECTS = presets
