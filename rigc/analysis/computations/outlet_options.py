"""OutletProblem and limits -> which empty outlets suit each unit, each sort of outlet judged once."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.outlet_problem import OutletProblem, Site
from rigc.model.things import Unit

Kind = tuple[object, ...]


class Options:
    """`free` holds the numbers of the empty sites of each kind, in order of declaration."""

    def __init__(self, problem: OutletProblem, limits: LoadLimits) -> None:
        self.problem, self.limits = problem, limits
        self.free: dict[Kind, list[int]] = {}
        self._looks: dict[Kind, tuple[Site, list[Kind]]] = {}
        for at, site in enumerate(problem.sites):
            if site.tenants:
                continue
            if site.kind not in self.free:
                self.free[site.kind] = []
                self._looks.setdefault(site.look, (site, []))[1].append(site.kind)
            self.free[site.kind].append(at)
        self._known: dict[str, list[tuple[Kind, int]]] = {}

    def of(self, unit: Unit) -> list[tuple[Kind, int]]:
        """Kinds of empty sites that suit a unit, with the number of the tap; the smallest outlet that will do first."""
        if unit.name not in self._known:
            self._known[unit.name] = self._judged(unit)
        return self._known[unit.name]

    def sites(self) -> Iterator[tuple[Kind, int]]:
        """Every empty site with its kind, in order of declaration."""
        return iter(sorted(((kind, at) for kind, sites in self.free.items() for at in sites), key=lambda each: each[1]))

    def kinds(self, unit: Unit) -> list[Kind]:
        """The same without the taps, each kind once."""
        return list(dict.fromkeys(kind for kind, _ in self.of(unit)))

    def _judged(self, unit: Unit) -> list[tuple[Kind, int]]:
        found = []
        needed = unit.volts.value if unit.volts is not None else 0.0
        for site, kinds in self._looks.values():
            for tap in self.problem.suits(unit, site, self.limits):
                limit = site.taps[tap].limit_ma
                small_first = limit if unit.draws_ma is not None else -limit
                found.append((abs(site.taps[tap].volts - needed), small_first, len(site.taps), tap, kinds))
        found.sort(key=lambda each: each[:3])
        return [(kind, tap) for *_, tap, kinds in found for kind in kinds]
