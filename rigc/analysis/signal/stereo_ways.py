"""A unit -> its inner ways with left kept to left and right to right, where both sides of a pair are wired."""

from __future__ import annotations

from rigc.model.inner_ways import Way, inner_ways
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit


def stereo_ways(rig: Rig, unit: Unit, wired: frozenset[Port]) -> list[Way]:
    """The ways with everything on. Stated paths stand; else, of a wired input pair, neither side feeds the other's output.

    A pair of which one side is wired feeds both outputs: so a mono way becomes a stereo one.
    """
    ways = inner_ways(rig, unit, wired)
    if unit.paths:
        return ways
    sides = {name: side for pair in unit.pairs for side, name in enumerate(pair)}
    whole = {name for pair in unit.pairs if all(Port(unit.name, each) in wired for each in pair) for name in pair}
    return [
        (start, end)
        for start, end in ways
        if not (start.jack in whole and end.jack in sides and sides[start.jack] != sides[end.jack])
    ]
