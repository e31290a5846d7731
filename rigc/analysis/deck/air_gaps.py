"""Supplies and what stands near them -> how much air lies before a vent, and what hangs under what."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.deck.placement import Outline
from rigc.analysis.deck.spot_on_thing import spot_of
from rigc.facts.foot import WARM_W
from rigc.model.deck import Place
from rigc.model.geometry.neighbours import neighbours
from rigc.model.geometry.polygon import before
from rigc.model.rig import Rig
from rigc.model.things import Thing, Unit

_HAIR_MM = 1e-6


def beside_each(bodies: Sequence[Outline], within_mm: float = 0.0) -> dict[str, tuple[Outline, ...]]:
    """Of each body those in whose plan its own reaches, or that are nearer than that in plan, in their order; which deck they are on and on
    which side of it does not count."""
    found: dict[str, list[int]] = {body.thing: [] for body in bodies}
    for one, other in neighbours([body.area for body in bodies], within_mm):
        found[bodies[one].thing].append(other)
        found[bodies[other].thing].append(one)
    return {name: tuple(bodies[number] for number in sorted(near)) for name, near in found.items()}


def gets_warm(thing: Thing) -> bool:
    """Whether it gives off so much heat that no supply should hang under it; of one that does not say, whether it takes so much."""
    taken = taken_w(thing) if isinstance(thing, Unit) else 0.0
    watts = taken if thing.warm_w is None else thing.warm_w.value
    return watts - WARM_W.value > -_HAIR_MM


def taken_w(unit: Unit) -> float:
    """What a unit takes, in watts; 0 where that is not known."""
    return 0.0 if unit.volts is None or unit.draws_ma is None else unit.volts.value * unit.draws_ma.value / 1000


def hangs_below(rig: Rig, supply: Outline, body: Outline) -> bool:
    """Whether a supply hangs under part of what stands on the same deck."""
    hangs = supply.under and supply.deck == body.deck and supply.thing in rig.supplies
    return hangs and min(body.area.overlap(supply.area)) > _HAIR_MM


def vent_gap(thing: Thing, place: Place, side: str, other: Outline) -> float | None:
    """In mm, at least 0; None where the body stands beside or behind, or the thing's own size is not known."""
    if thing.width_mm is None or thing.depth_mm is None:
        return None
    width, depth = thing.width_mm.value, thing.depth_mm.value
    middles = {
        "left": ((0.0, depth / 2), (-1.0, depth / 2), depth),
        "right": ((width, depth / 2), (width + 1, depth / 2), depth),
        "front": ((width / 2, 0.0), (width / 2, -1.0), width),
        "rear": ((width / 2, depth), (width / 2, depth + 1), width),
    }
    at, out, long = middles[side]
    start, ahead = spot_of(thing, place, *at), spot_of(thing, place, *out)
    free = before(other.corners, start, (ahead[0] - start[0], ahead[1] - start[1]), long / 2)
    across = width if side in ("left", "right") else depth
    return None if free is None or free <= -across else max(free, 0.0)
