"""Mains strips: that they are there, their facts, and what is plugged into each."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, REPOWER, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, knowledge, paper_aspects
from rigc.model.rig import Rig


def mains_strips(rig: Rig) -> Iterator[Aspect]:
    """What is plugged where is work; the rest is read."""
    for strip in rig.mains_strips.values():
        yield Aspect("mains strip", strip.name, "", strip.title or strip.kind, True, DESIGN, span=strip.declared)
        yield from fact_aspects("mains strip", strip)
        yield knowledge("mains strip", strip)
        yield from paper_aspects("mains strip", strip)
        names = tuple(name for name, into, _ in rig.power.plugged if into == strip.name)
        yield Aspect("mains strip", strip.name, "plugged in", ", ".join(names) or "nothing", names, DESIGN, (REPOWER,))


ASPECTS = mains_strips
