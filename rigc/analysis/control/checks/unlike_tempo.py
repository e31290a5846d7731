"""A song states another tempo than the preset on which it is played.

Why it matters: the preset sets the clock of delays to its own tempo when it is called, the player's sheet bears the other: the echoes run
against the band, and whoever looks it up at the soundcheck finds two numbers.
What to do: correct the one that is wrong; a preset of several songs of unlike tempo states none.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.rig import Rig

KIND = Kind(
    "unlike-tempo",
    Level.REMARK,
    __doc__,
    "a song and its preset state one tempo, where both state one",
    "common practice, no source",
)


def unlike_tempo(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such song."""
    for song in rig.songs:
        preset = rig.presets.get(song.preset) if song.preset is not None else None
        if preset is None or song.tempo_bpm is None or preset.tempo_bpm is None:
            continue
        played, set_to = song.tempo_bpm, preset.tempo_bpm
        if played.value == set_to.value:
            continue
        yield KIND.at(
            played.span,
            f"'{song.title}' is played at {played.typed} on preset {preset.number}, which sets {set_to.typed}",
            subject=(song.title, f"preset {preset.number}"),
            label="the song's tempo",
            also=(Label(set_to.span, f"that of preset {preset.number}"),),
            numbers=(Number("song", played.value, "bpm"), Number("preset", set_to.value, "bpm")),
            mends=(
                Mend(f"write {set_to.typed} in the song", (Replace(played.span, set_to.typed),)),
                Mend(f"write {played.typed} in preset {preset.number}", (Replace(set_to.span, played.typed),)),
            ),
        )


CHECK = unlike_tempo
