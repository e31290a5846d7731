"""Stock: the cables, plugs and strips in use with their facts, and the premade lengths. What nothing is made of is a detail."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.leads.leads import Leads
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.revision.compared.aspect import PAPER, REWIRE, STOCK, Aspect
from rigc.analysis.revision.compared.facts import labels
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.rig import Rig

MADE_ANEW = frozenset((("cable", "signal"), ("cable", "conductors")))
"""What makes leads of it other leads, not only other figures."""


def stock(rig: Rig, leads: Leads, strips: MountingStrip) -> Iterator[Aspect]:
    """All that the rig can take from."""
    used = {lead.cable for lead in leads.all} | {plug for lead in leads.all for plug in lead.ends}
    used |= {each.strip for each in strips.units}
    families: dict[str, dict[str, Any]] = {
        "cable": rig.stock.cables,
        "plug": rig.stock.plugs,
        "strip": rig.stock.strips,
    }
    for kind, things in families.items():
        for thing in things.values():
            yield from _item(kind, thing, thing.name not in used)
    for signal, lengths in rig.stock.premade_mm.items():
        text = f"{', '.join(f'{length:g}' for length in lengths)} mm"
        yield Aspect("premade lengths", signal, "", text, lengths, STOCK)
        for length, price in rig.stock.premade_price.get(signal, {}).items():
            label = f"price of {length:g} mm"
            yield Aspect("premade lengths", signal, label, words(price), exact(price), STOCK, span=price.span)
        for length, mass in rig.stock.premade_kg.get(signal, {}).items():
            label = f"mass of {length:g} mm"
            yield Aspect("premade lengths", signal, label, words(mass), exact(mass), STOCK, span=mass.span)


def _item(kind: str, thing: Any, detail: bool) -> Iterator[Aspect]:
    span = thing.declared
    yield Aspect(kind, thing.name, "", thing.title or kind, True, STOCK, span=span, detail=detail)
    for field, label in labels(thing.FIELDS).items():
        value = getattr(thing, field)
        work = (REWIRE,) if (kind, field) in MADE_ANEW and not detail else (PAPER,)
        yield Aspect(kind, thing.name, label, words(value), exact(value), STOCK, work, span, detail)


ASPECTS = stock
