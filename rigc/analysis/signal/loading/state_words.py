"""Sections and impedances -> the words in which findings and sheets tell them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from rigc.analysis.signal.loading.section import Section
from rigc.model.ways.audio_state import UNPOWERED, AudioState

if TYPE_CHECKING:
    from rigc.analysis.signal.loading.loading import Loading


def states_told(loading: Loading, sections: Iterable[Section]) -> str:
    """The states in which these sections are there, in brackets' length: `every state`, or the first and how many more."""
    found = ordered(loading, sections)
    powered = [state for state in loading.audio.all if state.kind != UNPOWERED]
    if len([state for state in found if state.kind != UNPOWERED]) == len(powered):
        return "every state"
    more = len(found) - 1
    return found[0].name + (f" and {more} more state{'s' * (more > 1)}" if more else "")


def worst_told(loading: Loading, worst: Iterable[Section], sections: Iterable[Section]) -> str:
    """The states for which a figure is told, `worst` being the sections that have it, and in how many the limit is passed if
    these are not all."""
    told, here = states_told(loading, worst), ordered(loading, worst)
    passed = [state for state in ordered(loading, sections) if state.kind != UNPOWERED]
    if len(passed) <= len([state for state in here if state.kind != UNPOWERED]):
        return told
    powered = [state for state in loading.audio.all if state.kind != UNPOWERED]
    every = len(passed) == len(powered)
    return f"{told}; the limit is passed in {'every state' if every else f'{len(passed)} of {len(powered)} states'}"


def ordered(loading: Loading, sections: Iterable[Section]) -> list[AudioState]:
    """The states of these sections, each once, in the order of all states."""
    names = {state.name for section in sections for state in loading.states(section)}
    return [state for state in loading.audio.all if state.name in names]


def marks(section: Section) -> str:
    """The leads of a section by their numbers."""
    return ", ".join(lead.mark for lead in section.leads)


def fact_of(reason: str) -> str:
    """The fact that is missing, from the words in which it is told so: `how 'marl' is bypassed is not said`."""
    return reason.removesuffix(" is not said").removesuffix(" is not known")


def remedy(reason: str) -> str:
    """The one line to write so that a missing fact is there, from the words in which it is told missing."""
    name = reason.split("'")[1] if "'" in reason else ""
    if reason.endswith("is bypassed is not known"):
        return f"find out how '{name}' is bypassed, and write true, buffered, trails or always-on in place of `unknown`"
    if "is bypassed" in reason:
        return f"write `bypass` in '{name}'"
    if reason.startswith("the impedance of"):
        return f"write it where '{name}' is declared, behind the kind of jack: ___ ohm"
    if reason.startswith("what feeds"):
        return f"declare what is plugged in at '{name}', and begin the chain there"
    word = next((word for word in ("resistance", "track") if f" {word} of" in reason), "")
    return f"write `{word}` in '{name}'" if word else f"write it in '{name}'"


def wire_remedy(reasons: Iterable[str], sections: Iterable[Section]) -> str:
    """What to write so that the first of these reasons is gone; where a lead lacks it, so that all are of which the same is to be written."""
    first = next(iter(reasons))
    leads = {lead.mark: lead for section in sections for lead in section.leads if lead.missing}
    where = next((lead.wanted[0] for lead in leads.values() if lead.missing == first), "")
    if not where:
        return remedy(first)
    lines = dict.fromkeys(lead.wanted[1] for lead in leads.values() if lead.wanted[0] == where)
    return f"{where}: {', '.join(f'`{line}`' for line in lines)}"
