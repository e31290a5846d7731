"""A wiring with all off -> leads one behind the other, where each unit between two is wire and nothing else: walked as one in every state
in which no unit along them is switched."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Set as AbstractSet

from rigc.model.jacks import Port
from rigc.model.wishes import Connection

Links = tuple[tuple[int, Connection], ...]
"""The leads at a jack, each with its number."""


class StraightRun:
    """Leads by their numbers; of each the unit at its end, and the jack where that goes on, with the one lead there."""

    def __init__(self) -> None:
        self.hops: list[int] = []
        self.units: list[str] = []
        self.passed: list[tuple[Port, Links]] = []
        self._places: dict[str, list[int]] = {}

    def add(self, hop: int, unit: str, port: Port, links: Links) -> int:
        """One lead more, with its place in the run."""
        self._places.setdefault(unit, []).append(len(self.hops))
        self.hops.append(hop)
        self.units.append(unit)
        self.passed.append((port, links))
        return len(self.hops) - 1

    def switched(self, units: AbstractSet[str]) -> list[int]:
        """The places of these units along it."""
        return sorted(place for unit in units & self._places.keys() for place in self._places[unit])

    def until(self, place: int, switched: list[int]) -> int:
        """How far it goes from a place on before the next of these; its length if there is none."""
        at = bisect_left(switched, place)
        return switched[at] if at < len(switched) else len(self.hops)
