"""Rings and scenarios -> the words in which findings and sheets name them."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.ground.rings import Ring
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, FAR, METAL, GroundLink, Pole


def pole_words(pole: Pole) -> str:
    """A ground as its user knows it: the thing; beyond an isolating path, its jack; the metal of a panel."""
    thing, part = pole
    if pole == EARTH:
        return "earth"
    if part == METAL:
        return f"metal of {thing}"
    return f"{thing}.{part[len(FAR) + 1 :]}" if part.startswith(f"{FAR} ") else thing


def link_words(link: GroundLink) -> str:
    """Its leads by their numbers; empty for a mains earth."""
    return " + ".join(link.marks)


def ring_words(ring: Ring) -> str:
    """`left-amp – A27 – canaltwo – ... – right-amp – earth`; a ring not through the earth ends where it began."""
    words: list[str] = []
    for pole, link in zip(ring.poles, ring.links, strict=True):
        words += [pole_words(pole), *([link_words(link)] if link.marks else [])]
    if not ring.through_earth:
        words.append(pole_words(ring.poles[0]))
    return " – ".join(words)


def in_scenarios(rig: Rig, names: Iterable[str]) -> str:
    """`, in scenario 'van'`, to be put behind a sentence; empty where the rig has no scenario or only one."""
    held = list(names)
    if len(rig.scenarios) < 2:
        return ""
    if len(held) == len(rig.scenarios):
        return ", in every scenario"
    return f", in scenario{'s' if len(held) > 1 else ''} {listed(held)}"
