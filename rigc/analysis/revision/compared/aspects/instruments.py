"""Instruments: that they are there, and their facts."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, jack_aspects, knowledge, paper_aspects
from rigc.model.rig import Rig


def instruments(rig: Rig) -> Iterator[Aspect]:
    """All that is stated of each instrument."""
    for one in rig.instruments.values():
        yield Aspect("instrument", one.name, "", one.title or one.kind, True, DESIGN, span=one.declared)
        yield from fact_aspects("instrument", one)
        yield from jack_aspects("instrument", one.name, one.jacks)
        yield knowledge("instrument", one)
        yield from paper_aspects("instrument", one)


ASPECTS = instruments
