"""Strips, plates and fixings -> what stores hand out to mount the units."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mounting.strip_order import StripOrder
from rigc.analysis.stores.pulled import Pulled, counted, pulled
from rigc.model.rig import Rig


def strips(order: StripOrder) -> Iterator[Pulled]:
    """Strip and tape by the metre: as laid, and what is ordered more."""
    for kind in order.kinds:
        yield pulled(kind.name, "strip", kind.laid_mm / 1000, taken=kind.order, unit="m")


def fixings(rig: Rig) -> Iterator[Pulled]:
    """Bridge plates by their size, and for how many things each other fixing is stated."""
    plates: dict[str, list[str]] = {}
    for thing, text in rig.mounting.bridged:
        plates.setdefault(text or "size not stated", []).append(thing)
    for text, things in plates.items():
        yield pulled(text, "bridge plate", counted(things))
    words = {"brackets": "brackets", "bolted": "bolts", "screwed": "screws"}
    kinds: dict[str, list[str]] = {}
    for thing, kind in rig.mounting.fixings:
        kinds.setdefault(kind, []).append(thing)
    for kind, things in kinds.items():
        yield pulled(words.get(kind, kind), "fixing", counted(things), unit="sets")
