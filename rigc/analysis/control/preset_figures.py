"""Presets and songs -> the figures that they state: `preset-2.number`, `preset-2.tempo`, `song-1.tempo`."""

from __future__ import annotations

from rigc.analysis.control.written_number import written_number
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import stated
from rigc.traced.reason import AS_STATED, STATED
from rigc.traced.units import BEATS


class PresetFigures(Record):
    """Numbers and tempos (beats per minute) by the number of the preset; tempos of songs by their place, from 1.

    A preset or song that states no tempo has none.
    """

    numbers: dict[int, Figure]
    tempos: dict[int, Figure]
    songs: dict[int, Figure]


def preset_figures(rig: Rig) -> PresetFigures:
    """In the order of the source."""
    presets = rig.presets.values()
    return PresetFigures(
        {
            each.number: written_number(
                f"preset-{each.number}.number", f"preset-{each.number}", each.number, each.span, each.title
            )
            for each in presets
        },
        {
            each.number: _tempo(f"preset-{each.number}.tempo", f"the tempo of preset {each.number}", each.tempo_bpm)
            for each in presets
            if each.tempo_bpm is not None
        },
        {
            place: _tempo(f"song-{place}.tempo", f"the tempo of {each.title}", each.tempo_bpm)
            for place, each in enumerate(rig.songs, 1)
            if each.tempo_bpm is not None
        },
    )


def _tempo(name: str, label: str, fact: Quantity) -> Figure:
    return known_figure(name, stated(label, fact), BEATS, rule=AS_STATED, source=STATED)


COMPUTE = preset_figures
