"""Mounting: the strips and fixings of each thing."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.revision.compared.aspect import COMPUTED, DESIGN, REDRILL, Aspect
from rigc.model.rig import Rig


def mounting(rig: Rig, strips: MountingStrip) -> Iterator[Aspect]:
    """Strips are reckoned, fixings and plates are stated."""
    for each in strips.units:
        if each.count:
            text = f"{each.count} × {each.piece_mm:g} mm {each.strip}"
            value = (each.count, each.piece_mm, each.strip)
            yield Aspect("strips", each.thing, "", text, value, COMPUTED, (REDRILL,), each.span)
    for kind, pairs in (("fixing", rig.mounting.fixings), ("bridge plate", rig.mounting.bridged)):
        for thing, how in pairs:
            yield Aspect(kind, thing, "", how, how, DESIGN, (REDRILL,))


ASPECTS = mounting
