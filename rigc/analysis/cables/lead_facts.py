"""A lead -> the stated facts that its length leans on, so that an assumed one can mark it."""

from __future__ import annotations

from rigc.analysis.cables.lead_plugs import socket
from rigc.analysis.computations.leads import Lead
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Thing


def leans_on_assumed(rig: Rig, lead: Lead) -> bool:
    """Whether a figure behind a lead's length is assumed: its jacks, their things' bodies, its plugs, its decks."""
    facts = [deck.thickness_mm for deck in rig.decks.values()]
    for port, plug in zip((lead.start, lead.end), lead.ends, strict=True):
        facts += _of_jack(rig, port)
        if plug is not None:
            facts += [rig.stock.plugs[plug].exit_mm, rig.stock.plugs[plug].cut_in_mm]
    return any(fact is not None and fact.assumed for fact in facts)


def _of_jack(rig: Rig, port: Port) -> list[Quantity | None]:
    facts: list[Quantity | None] = []
    jack, thing = socket(rig, port), rig.things[port.thing]
    if jack is not None:
        facts += [jack.offset_mm, jack.height_mm]
    if isinstance(thing, Thing):
        facts += [thing.width_mm, thing.depth_mm]
    return facts
