"""Stock: the cables, plugs and strips in use with their facts, and the premade lengths. What nothing is made of is a detail."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.revision.compared.aspect import PAPER, REWIRE, STOCK, Aspect
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.rig import Rig

CABLE = {
    "title": "title",
    "signal": "signal",
    "capacitance_pf_per_m": "capacitance",
    "outer_mm": "outer",
    "area_mm2": "area",
    "strand": "strand",
    "conductors": "conductors",
    "mass_g_per_m": "mass",
    "colour": "colour",
    "price": "price",
}
PLUG = {
    "title": "title",
    "fits": "fits",
    "stand_out_mm": "stands out",
    "bend_mm": "bend",
    "exit_mm": "exit",
    "width_mm": "width",
    "height_mm": "height",
    "cut_in_mm": "takes in",
    "strip_back_mm": "strip back",
    "poles": "poles",
    "mass_kg": "mass",
    "price": "price",
    "soldered": "soldered",
}
MADE_ANEW = frozenset((("cable", "signal"), ("cable", "conductors")))
"""What makes leads of it other leads, not only other figures."""
STRIP = {
    "title": "title",
    "width_mm": "width",
    "pull_kpa": "pull",
    "mass_g_per_m": "mass",
    "mates": "mates with",
    "cycles": "cycles",
    "roll_mm": "roll",
    "price": "price",
}


def stock(rig: Rig, leads: Leads, strips: MountingStrip) -> Iterator[Aspect]:
    """All that the rig can take from."""
    used = {lead.cable for lead in leads.all} | {plug for lead in leads.all for plug in lead.ends}
    used |= {each.strip for each in strips.units}
    for kind, things, fields in (
        ("cable", rig.stock.cables, CABLE),
        ("plug", rig.stock.plugs, PLUG),
        ("strip", rig.stock.strips, STRIP),
    ):
        for thing in things.values():
            yield from _item(kind, thing, fields, thing.name not in used)
    for signal, lengths in rig.stock.premade_mm.items():
        text = f"{', '.join(f'{length:g}' for length in lengths)} mm"
        yield Aspect("premade lengths", signal, "", text, lengths, STOCK)
        for length, price in rig.stock.premade_price.get(signal, {}).items():
            label = f"price of {length:g} mm"
            yield Aspect("premade lengths", signal, label, words(price), exact(price), STOCK, span=price.span)
        for length, mass in rig.stock.premade_kg.get(signal, {}).items():
            label = f"mass of {length:g} mm"
            yield Aspect("premade lengths", signal, label, words(mass), exact(mass), STOCK, span=mass.span)


def _item(kind: str, thing: Any, fields: dict[str, str], detail: bool) -> Iterator[Aspect]:
    span = thing.declared
    yield Aspect(kind, thing.name, "", thing.title or kind, True, STOCK, span=span, detail=detail)
    for field, label in fields.items():
        value = getattr(thing, field)
        work = (REWIRE,) if (kind, field) in MADE_ANEW and not detail else (PAPER,)
        yield Aspect(kind, thing.name, label, words(value), exact(value), STOCK, work, span, detail)


ASPECTS = stock
