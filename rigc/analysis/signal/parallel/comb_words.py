"""Notches, and what is lost at the lowest note -> the words in which findings, sheets and reasons tell them."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite

from rigc.analysis.signal.parallel.comb import Notch
from rigc.analysis.signal.parallel.parallel import LowNote, Parallel
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.wording import joined


def notches_told(found: Sequence[Notch]) -> str:
    """`notches at 198 Hz (−23.6 dB), 470 Hz (−8.2 dB) and 782 Hz (−16.8 dB)`; `nulls at 167 and 500 Hz` where nothing is left."""
    if not any(isfinite(each.loss_db) for each in found):
        return f"nulls at {joined(decimals(each.hertz, 0) for each in found)} Hz"
    return f"notches at {joined(f'{decimals(each.hertz, 0)} Hz ({depth_told(each)})' for each in found)}"


def depth_told(notch: Notch) -> str:
    """What is lost at a notch."""
    return f"{decimals(notch.loss_db, 1)} dB" if isfinite(notch.loss_db) else "all is lost"


def note_told(note: LowNote) -> str:
    """A note with whose it is."""
    whose = f"the lowest note of '{note.instrument}'" if note.stated else "the low E of a guitar"
    return f"{decimals(note.hertz, 2)} Hz, {whose}"


def notes_taken(paths: Parallel) -> str:
    """For which instruments a note is taken that the source does not state; empty where there are none."""
    names = [f"'{note.instrument}'" for note in paths.notes if not note.stated]
    return f"{' and '.join(names)} state{'s' * (len(names) == 1)} no `lowest note`" if names else ""
