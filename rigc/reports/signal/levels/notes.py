"""What the reader of the level table must know: how the figures were made."""

from __future__ import annotations

from rigc.facts.levels import LEAST_MARGIN_DB, LOW_BY_DB, ZERO_DBU_V
from rigc.facts.paths import LATENCY_APART_MS, LOWEST_NOTE_HZ
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.reports.content import Paragraph


def reading(rig: Rig) -> Paragraph:
    """The figures on which the table rests, each with its source, and the lowest note of each instrument."""
    lines = (
        f"0 dBu is {ZERO_DBU_V.value:.4f} V r.m.s. ({ZERO_DBU_V.source}). The highest level of all on/off states counts; "
        "a stated level stands, else what comes in, at most what the input takes, and the unit's gain are added. What an input takes from its source is not counted.",
        f"Wanted: {LEAST_MARGIN_DB.value:g} dB between the highest peak and what the input takes ({LEAST_MARGIN_DB.source}); "
        f"not more than {LOW_BY_DB.value:g} dB below what drives an input fully ({LOW_BY_DB.source}).",
        f"Side by side: at most {LATENCY_APART_MS.value:g} ms apart ({LATENCY_APART_MS.source}). Notches and apart are with everything on; "
        "what is lost is told against all paths in step, at the lowest note in the on/off state that is named, the worst. "
        f"Of an instrument that states no lowest note it is {LOWEST_NOTE_HZ.value:.2f} Hz, {LOWEST_NOTE_HZ.says} ({LOWEST_NOTE_HZ.source}).",
        *(f"Lowest note of {each.name}: {_lowest(each)}." for each in rig.instruments.values()),
    )
    return Paragraph("reading", lines, heading="How to read the figures")


def _lowest(instrument: Instrument) -> str:
    stated = instrument.lowest_note_hz
    return "not stated, a guitar's low E is taken" if stated is None else stated.typed
