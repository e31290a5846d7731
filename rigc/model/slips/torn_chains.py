"""Rig -> the things on chains that are torn: a stop has no jack for sound there, or is a supply, which another rule tells."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.model.rig import Rig
from rigc.model.wishes import Stop


def torn_chains(rig: Rig) -> frozenset[str]:
    """The things of every chain and loop that a stop without a fitting audio jack cuts in two."""
    gaps = {gap.thing for gap in rig.gaps}
    torn = (stops for stops in _paths(rig) if any(stop.thing in gaps or _silent(rig, stop) for stop in stops))
    return frozenset(stop.thing for stops in torn for stop in stops)


def _paths(rig: Rig) -> Iterator[tuple[Stop, ...]]:
    yield from (chain.stops for chain in rig.chains)
    yield from (loop.stops for loop in rig.loops)
    yield from (path.stops for blend in rig.blends for path in blend.paths)


def _silent(rig: Rig, stop: Stop) -> bool:
    if stop.thing in rig.supplies:
        return True
    jack = rig.things[stop.thing].jack(stop.jack) if stop.jack and stop.thing in rig.things else None
    return jack is not None and not jack.audio
