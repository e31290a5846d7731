"""Levels -> the things that leave a level or an input's maximum unknown, each once, with what is lacking in words."""

from __future__ import annotations

from rigc.analysis.signal.levels.levels import Levels
from rigc.model.rig import Rig
from rigc.record import Record


class Lacking(Record):
    """What a thing does not say, what can't be checked for want of it, and how it would be written."""

    words: str
    follows: str
    example: str


def unknown_levels(rig: Rig, levels: Levels) -> dict[str, Lacking]:
    """By name, in the order of the leads. A panel jack that says nothing takes whatever comes."""
    gives: dict[str, int] = {}
    outs: dict[str, str] = {}
    takes: dict[str, str] = {}
    for edge in levels.edges:
        for name in edge.lacking if edge.peak_dbu is None else ():
            gives[name] = gives.get(name, 0) + 1
            if name == edge.start.thing:
                outs.setdefault(name, edge.start.jack)
        if edge.maximum is None and edge.end.thing in rig.units:
            takes.setdefault(edge.end.thing, edge.end.jack)
    return {
        name: _lacking(rig, name, gives.get(name, 0), outs.get(name), takes.get(name)) for name in {**gives, **takes}
    }


def _lacking(rig: Rig, name: str, leads: int, output: str | None, jack: str | None) -> Lacking:
    words, examples = [], []
    if leads:
        words.append("what level it gives" if output in (None, "out") else f"what level '{output}' gives")
        out = output or next((each.name for each in rig.things[name].jacks if each.role in ("output", "panel")), "out")
        examples.append(f"`level {out} ___ dBu peak ___ dBu`")
    if jack is not None:
        words.append(f"what '{jack}' takes at most")
        examples.append(f"`level {jack} max ___ dBu`")
    behind = (
        f"the level{'s' if leads > 1 else ''} of {leads} lead{'s' if leads > 1 else ''} from it on" if leads else ""
    )
    follows = " and ".join(filter(None, (behind, "its margin" if jack is not None else "")))
    return Lacking(" nor ".join(words), follows, ", ".join(examples))
