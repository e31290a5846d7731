"""The legs of a Y lead -> its stretches from the outlet on: how long each is, what its wire resists, and what it carries.

Where the legs part is not stated. Reckoned with is the most that each can lose: two legs lie together as far as the shorter of them
goes, and what they share is of the thinner of their wires, since both are stated and the trunk can only be one.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from rigc.analysis.power.conductor import Conductor
from rigc.record import Record


class Leg(Protocol):
    """A leg: its number, its length, its wire and its current; None where the source lacks the fact."""

    @property
    def mark(self) -> str: ...
    @property
    def length_mm(self) -> float | None: ...
    @property
    def wire(self) -> Conductor | None: ...
    @property
    def ma(self) -> float | None: ...


class Stretch(Record):
    """A stretch: the legs that lie in it, its length, its wire, and what all of them carry (None where that of one is not known)."""

    marks: tuple[str, ...]
    length_mm: float
    wire: Conductor
    ma: float | None

    @property
    def ohm(self) -> float:
        """What one of its two conductors resists at 20 °C."""
        return self.wire.ohm_per_m * self.length_mm / 1000


def y_stretches(legs: Sequence[Leg]) -> tuple[Stretch, ...] | None:
    """Those of the outlet's side first, the last one with the longest leg alone; None where a length or a wire is not known."""
    known = [(leg.length_mm, leg.wire, leg) for leg in legs if leg.length_mm is not None and leg.wire is not None]
    if len(known) < len(legs):
        return None
    found, done = [], 0.0
    for length in sorted({length for length, _, _ in known}):
        there = [(wire, leg) for end, wire, leg in known if end >= length]
        currents = [leg.ma for _, leg in there if leg.ma is not None]
        found.append(
            Stretch(
                tuple(leg.mark for _, leg in there),
                length - done,
                max((wire for wire, _ in there), key=lambda wire: wire.ohm_per_m),
                sum(currents) if len(currents) == len(there) else None,
            )
        )
        done = length
    return tuple(found)
