"""Sections, states and figures -> the words of the loading table's cells."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.computations.loading import Loading
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.state_words import ordered
from rigc.model.audio_state import UNPOWERED
from rigc.reports.content import Cell

_FEW = 4
UNKNOWN_MARK = "not known"


def way(section: Section) -> str:
    """From what drives it to the inputs it meets."""
    ends = dict.fromkeys(str(load.port) for load in section.loads)
    return f"{section.source} → {', '.join(ends) or 'nothing'}"


def state_names(loading: Loading, sections: Iterable[Section]) -> str:
    """The states in which sections are there: all by name, or `every state`, or `every state but` a few."""
    found = [state.name for state in ordered(loading, sections)]
    powered = [state.name for state in loading.audio.all if state.kind != UNPOWERED]
    absent = [name for name in powered if name not in found]
    dark = [name for name in found if name not in powered]
    if not absent:
        return ", ".join(["every state", *dark])
    if len(absent) < len(found) and len(absent) <= _FEW < len(found):
        return f"every state but {', '.join(absent)}" + (f"; {', '.join(dark)}" if dark else "")
    return ", ".join(found)


def figure(value: float | None, places: int, assumed: bool = False) -> Cell:
    """A number, marked where it is not known or leans on an assumed fact."""
    if value is None:
        return Cell("", mark=UNKNOWN_MARK)
    text = f"{value:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return Cell("0" if text == "-0" else text.replace("-", "−"), mark="assumed" if assumed else "")
