"""Rig -> the problem of who stands on which outlet: units without a feed, outlets to choose from, and what binds them."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits, exceeds
from rigc.analysis.computations.outlet_fit import fits
from rigc.analysis.computations.power_tap import Tap
from rigc.model.jacks import Port
from rigc.model.things import Unit
from rigc.record import Record


class Site(Record):
    """An outlet with the `taps` that its settings make (one where the source states it) and the units stated on it.

    `look` is equal for outlets that give the same; `kind` also tells supplies and commons apart where that matters:
    empty sites of one kind are interchangeable. `common` is empty where the outlet is isolated. Only an outlet that is
    not joined in series or parallel is `open` to a further unit.
    """

    outlet: Port
    taps: tuple[Tap, ...]
    look: tuple[object, ...]
    kind: tuple[object, ...]
    common: str
    tenants: tuple[Unit, ...]
    open: bool


class Budget(Record):
    """What a supply may give in all (W, or mA if not `watts`), and what the stated feeds take of it."""

    watts: bool
    ceiling: float
    taken: float


class OutletProblem(Record):
    """Units to place, the hardest first; sites in order of declaration; who may share; outlets to keep free by supply ("" for any)."""

    units: tuple[Unit, ...]
    sites: tuple[Site, ...]
    sharers: dict[str, frozenset[str]]
    turned: frozenset[str]
    sized: frozenset[str]
    budgets: dict[str, Budget]
    spare: dict[str, int]

    def suits(self, unit: Unit, site: Site, limits: LoadLimits) -> list[int]:
        """Which of the site's taps this unit could stand on alone, the voltage nearest to what it needs first."""
        found = [
            at
            for at, tap in enumerate(site.taps)
            if fits(unit, tap, unit.name in self.turned, unit.name in self.sized) and bears(tap, (unit,), limits)
        ]
        needed = unit.volts.value if unit.volts is not None else 0.0
        return sorted(found, key=lambda at: (abs(site.taps[at].volts - needed), at))


def bears(tap: Tap, units: tuple[Unit, ...], limits: LoadLimits) -> bool:
    """Whether a tap bears these units together: their current within the limit, their start-up current within the rating.

    A unit whose current is not known weighs nothing here; the checks say that they can't tell.
    """
    share = limits.digital_pct if any(unknown_start(unit) for unit in units) else limits.load_pct
    return not (
        exceeds(sum(drawn_ma(unit) for unit in units), share, tap.limit_ma)
        or exceeds(sum(highest_ma(unit) for unit in units), 100, tap.limit_ma)
    )


def drawn_ma(unit: Unit) -> float:
    """What is known to be drawn, in mA; 0 where it is not known."""
    return unit.draws_ma.value if unit.draws_ma is not None else 0.0


def highest_ma(unit: Unit) -> float:
    """The highest current that is known, at start-up or later, in mA."""
    return max(drawn_ma(unit), unit.starts_ma.value if unit.starts_ma is not None else 0.0)


def unknown_start(unit: Unit) -> bool:
    """Whether a unit is digital and its start-up current is not stated."""
    return "digital" in unit.flags and unit.starts_ma is None
