"""Units, amps and desks: that they are there, and their facts."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, jack_aspects, knowledge, paper_aspects
from rigc.model.rig import Rig


def units(rig: Rig) -> Iterator[Aspect]:
    """Facts are only read; the work that follows from them is that of leads, places and feeds."""
    for unit in rig.units.values():
        yield Aspect("unit", unit.name, "", unit.title or unit.kind, True, DESIGN, span=unit.declared)
        yield from fact_aspects("unit", unit)
        yield from jack_aspects("unit", unit.name, unit.jacks)
        yield knowledge("unit", unit)
        yield from paper_aspects("unit", unit)


ASPECTS = units
