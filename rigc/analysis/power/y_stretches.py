"""The legs of a Y lead -> its stretches from the outlet on: how long each is, what its wire resists, and what it carries.

Where the legs part is not stated. Reckoned with is the most that each can lose: two legs lie together as far as the shorter of them
goes, and what they share is of the thinner of their wires, since both are stated and the trunk can only be one.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from rigc.analysis.power.conductor import Conductor
from rigc.record import Record
from rigc.traced.means import highest, least, total
from rigc.traced.term import Term, Traced, known


class Leg(Protocol):
    """A leg: its number, its length in mm, its wire (None where the source lacks it) and its current in mA."""

    @property
    def mark(self) -> str: ...
    @property
    def millimetres(self) -> Traced: ...
    @property
    def wire(self) -> Conductor | None: ...
    @property
    def current(self) -> Traced: ...


class Stretch(Record):
    """A stretch: the legs that lie in it, its length, its wire with what a kilometre of that resists in Ω, and what all legs carry in mA
    (unknown where that of one is)."""

    marks: tuple[str, ...]
    length_mm: Term
    wire: Conductor
    ohm_per_km: Term
    current: Traced

    @property
    def ohm(self) -> float:
        """What one of its two conductors resists at 20 °C."""
        return float(self.ohm_per_km) * float(self.length_mm) / 1e6

    @property
    def ma(self) -> Term | None:
        """What it carries; None where not known."""
        return known(self.current)


def y_stretches(legs: Sequence[Leg]) -> tuple[Stretch, ...] | None:
    """Those of the outlet's side first, the last one with the longest leg alone; None where a length or a wire is not known."""
    whole = [
        (length, leg.wire, leg)
        for leg in legs
        if (length := known(leg.millimetres)) is not None and leg.wire is not None
    ]
    if len(whole) < len(legs):
        return None
    found: list[Stretch] = []
    done: float = 0
    for shortest in sorted({float(length) for length, _, _ in whole}):
        there = [each for each in whole if each[0] >= shortest]
        end = least(*(length for length, _, _ in there))
        wires = {wire.ohm_per_km.name: wire for _, wire, _ in there}
        found.append(
            Stretch(
                tuple(leg.mark for _, _, leg in there),
                end - done,
                max(wires.values(), key=lambda wire: wire.ohm_per_km),
                highest(*(wire.ohm_per_km for wire in wires.values())),
                total(leg.current for _, _, leg in there),
            )
        )
        done = end
    return tuple(found)
