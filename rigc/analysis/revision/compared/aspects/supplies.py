"""Supplies: that they are there, their facts, and each outlet."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, FACTS, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, jack_aspects, knowledge, paper_aspects
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.rig import Rig
from rigc.model.things import Outlet


def supplies(rig: Rig) -> Iterator[Aspect]:
    """Facts are only read; the work that follows from them is that of feeds and places."""
    for supply in rig.supplies.values():
        yield Aspect("supply", supply.name, "", supply.title or supply.kind, True, DESIGN, span=supply.declared)
        yield from fact_aspects("supply", supply)
        yield from jack_aspects("supply", supply.name, supply.jacks)
        yield knowledge("supply", supply)
        yield from paper_aspects("supply", supply)
        for outlet in supply.outlets:
            yield _outlet(supply.name, outlet)


def _outlet(supply: str, outlet: Outlet) -> Aspect:
    ratings = " or ".join(f"{each.volts.typed} {each.current} {each.milliamps.typed}" for each in outlet.ratings)
    seat = (outlet.side, outlet.offset_mm, outlet.height_mm)
    parts = [ratings, f"common {outlet.common}" if outlet.common else "isolated", str(outlet.connector or "")]
    parts += [f"captive {outlet.captive_mm.typed}"] if outlet.captive_mm is not None else []
    parts += [outlet.polarity or "", " ".join(words(each) for each in seat if each is not None)]
    return Aspect(
        "supply",
        supply,
        f"outlet {outlet.name}",
        ", ".join(filter(None, parts)),
        exact(outlet),
        FACTS,
        span=outlet.span,
    )


ASPECTS = supplies
