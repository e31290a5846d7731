"""Strips, plates and fixings -> what stores hand out to mount the units."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.pulling.pulled import Pulled
from rigc.model.rig import Rig


def strips(order: StripOrder) -> Iterator[Pulled]:
    """Strip and tape by the metre: as laid, and what is ordered more."""
    for kind in order.kinds:
        laid_m = kind.laid_mm / 1000
        yield Pulled(kind.name, "strip", "m", laid_m, kind.order_mm / 1000 - laid_m)


def fixings(rig: Rig) -> Iterator[Pulled]:
    """Bridge plates by their size, and for how many things each other fixing is stated."""
    plates = [text or "size not stated" for _, text in rig.mounting.bridged]
    for text in dict.fromkeys(plates):
        yield Pulled(text, "bridge plate", "", plates.count(text))
    kinds = [kind for _, kind in rig.mounting.fixings]
    words = {"brackets": "brackets", "bolted": "bolts", "screwed": "screws"}
    for kind in dict.fromkeys(kinds):
        yield Pulled(words.get(kind, kind), "fixing", "sets", kinds.count(kind))
