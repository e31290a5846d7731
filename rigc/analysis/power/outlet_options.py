"""OutletProblem and limits -> which empty outlets suit each unit, each sort of outlet judged once."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.outlet_problem import OutletProblem, Site
from rigc.model.things import Unit

Kind = tuple[object, ...]


class Options:
    """`free` holds the numbers of the empty sites of each kind, `room` how many empty sites have each look."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits) -> None:
        self.problem, self.limits = problem, limits
        self.free: dict[Kind, list[int]] = {}
        self.room: dict[Kind, int] = {}
        self._first: dict[Kind, Site] = {}
        self._kinds: dict[Kind, list[Kind]] = {}
        for at, site in enumerate(problem.sites):
            if site.tenants:
                continue
            if site.kind not in self.free:
                self.free[site.kind] = []
                self._kinds.setdefault(site.look, []).append(site.kind)
            self.free[site.kind].append(at)
            self.room[site.look] = self.room.get(site.look, 0) + 1
            self._first.setdefault(site.look, site)
        self._known: dict[str, list[tuple[Kind, int]]] = {}

    def of(self, unit: Unit) -> Iterator[tuple[Kind, int]]:
        """Kinds of empty sites that suit a unit, with the number of the tap; the smallest outlet that will do first."""
        return ((kind, tap) for look, tap in self._judged(unit) for kind in self._kinds[look])

    def looks(self, unit: Unit) -> list[Kind]:
        """What the empty sites that suit it give, in the same order."""
        return list(dict.fromkeys(look for look, _ in self._judged(unit)))

    def _judged(self, unit: Unit) -> list[tuple[Kind, int]]:
        if unit.name not in self._known:
            found = [
                (*self._nearness(unit, site, tap), tap, look)
                for look, site in self._first.items()
                for tap in self.problem.suits(unit, site, self.limits)
            ]
            found.sort(key=lambda each: each[:2])
            self._known[unit.name] = [(look, tap) for *_, tap, look in found]
        return self._known[unit.name]

    def _nearness(self, unit: Unit, site: Site, tap: int) -> tuple[float, float]:
        needed = unit.volts.value if unit.volts is not None else 0.0
        limit = site.taps[tap].limit_ma
        return abs(site.taps[tap].volts - needed), limit if unit.draws_ma is not None else -limit
