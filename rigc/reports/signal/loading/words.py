"""Sections, states and figures -> the words of the loading table's cells."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.state_words import ordered
from rigc.model.ways.audio_state import UNPOWERED, AudioState

_FEW = 4


def way(section: Section) -> str:
    """From what drives it to the inputs it meets."""
    ends = dict.fromkeys(str(load.port) for load in section.loads)
    return f"{section.source} → {', '.join(ends) or 'nothing'}"


def state_names(loading: Loading, sections: Iterable[Section]) -> str:
    """The states in which sections are there: all by name, or `every state`, or `every state but` a few; by wiring where they
    differ, without its scenarios where these are the same in all."""
    found = ordered(loading, sections)
    wirings = {_wiring(state): state.when for state in loading.audio.all}
    same = len({when.scenarios for when in wirings.values()}) == 1
    told: dict[str, list[str]] = {}
    for wiring, when in wirings.items():
        mine = [_bare(state) for state in found if _wiring(state) == wiring]
        powered = [_bare(each) for each in loading.audio.all if _wiring(each) == wiring and each.kind != UNPOWERED]
        if mine:
            where = _with(when.instrument) if same and when.instrument else wiring
            told.setdefault(_told(mine, powered), []).append(where)
    if len(told) == 1 and len(*told.values()) == len(wirings):
        return next(iter(told))
    return "; ".join(f"{', '.join(where)}: {words}" for words, where in told.items())


def _told(found: list[str], powered: list[str]) -> str:
    """Some of the states of one wiring."""
    absent = [name for name in powered if name not in found]
    dark = [name for name in found if name not in powered]
    if not absent:
        return ", ".join(["every state", *dark])
    if len(absent) < len(found) and len(absent) <= _FEW < len(found):
        return f"every state but {', '.join(absent)}" + (f" ({', '.join(dark)} too)" if dark else "")
    return ", ".join(found)


def _wiring(state: AudioState) -> str:
    """What sets its connections apart, in the words with which its name ends."""
    return " and ".join(filter(None, (", ".join(state.when.scenarios), _with(state.when.instrument))))


def _with(instrument: str | None) -> str:
    return f"with {instrument}" if instrument else ""


def _bare(state: AudioState) -> str:
    return state.name.removesuffix(f", {_wiring(state)}")
