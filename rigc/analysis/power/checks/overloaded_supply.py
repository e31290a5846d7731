"""The units of a supply together take more than its ceiling (error), or more than {power.TOTAL_SHARE} of it (warning).

Why it matters: each outlet may be within its rating and the supply still shut down or overheat: its ceiling is often
less than the sum of its outlets.
What to do: feed a unit from another supply, or add one.
Source: arithmetic on stated values (error); common practice, no source (warning). `limit total` in the rig block sets
another limit for the warning. A supply that states no ceiling gives at least as much as one of its outlets.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.outlet_bearing import drawn_ma, highest_ma
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.unit_needs import current_of
from rigc.analysis.power.mends.other_feeds import moves
from rigc.analysis.power.misread_currents import misread
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.facts.power import TOTAL_SHARE
from rigc.model.rig import Rig
from rigc.model.things import Supply

KIND = Kind(
    "overloaded-supply",
    Level.ERROR,
    __doc__,
    f"sum of all outlets, start-up currents counted, ≤ the supply's ceiling; warning above {TOTAL_SHARE}",
    f"arithmetic on stated values; the {TOTAL_SHARE} are common practice, no source",
)


def overloaded_supply(
    rig: Rig, power: PowerAssignment, totals: SupplyTotals, limits: LoadLimits
) -> Iterator[Diagnostic]:
    """At most one finding a supply; none where a current is more likely misread, of which its outlet tells."""
    slips = {name for name, unit in rig.units.items() if misread(rig, unit)}
    doubted = {port.thing for feed in power.feeds if feed.unit in slips for port in feed.outlets}
    for total in totals.all:
        if total.supply in doubted:
            continue
        if total.ceiling is not None and exceeds(total.taken, 100, total.ceiling):
            yield _told(rig, power, total, limits, Level.ERROR)
        elif total.ceiling is not None and exceeds(total.started, 100, total.ceiling):
            yield _starting(rig, power, total, limits)
        elif total.ceiling is not None and exceeds(total.taken, limits.total_pct, total.ceiling):
            yield _told(rig, power, total, limits, Level.WARNING)
        elif total.ceiling is None and exceeds(
            total.taken, limits.total_pct, _least_ceiling(rig.supplies[total.supply])
        ):
            yield KIND.cant_check(
                rig.supplies[total.supply].declared,
                f"'{total.supply}' states no ceiling; whether its {total.drawn_w:g} W are too much can't be checked",
                subject=(total.supply,),
                help=f"write `ceiling` in '{total.supply}': its maker's figure, else the sum of its outlets",
            )
        elif total.unknown:
            yield KIND.cant_check(
                rig.supplies[total.supply].declared,
                f"the total of '{total.supply}' can't be checked: {listed(total.unknown)} "
                f"{'does' if len(total.unknown) == 1 else 'do'} not say what current is drawn",
                subject=(total.supply,),
                help=f"measure it and write `draws` in {listed(total.unknown)}",
                wants=tuple(current_of(name) for name in total.unknown),
            )


def _least_ceiling(supply: Supply) -> float:
    """What a supply can give at least, in W: as much as one of its outlets, whatever its ceiling is."""
    return max(
        (each.volts.value * each.milliamps.value / 1000 for outlet in supply.outlets for each in outlet.ratings),
        default=0.0,
    )


def _starting(rig: Rig, power: PowerAssignment, total: SupplyTotal, limits: LoadLimits) -> Diagnostic:
    supply = rig.supplies[total.supply]
    ceiling, whole = supply.ceiling_w or supply.ceiling_ma, total.ceiling or 0.0
    return KIND.at(
        ceiling.span if ceiling else supply.declared,
        f"'{total.supply}' gives {whole:g} {total.unit} in all and its units together take {total.started:.4g} {total.unit} "
        f"at switch-on ({percentage(total.start_pct)})",
        subject=(total.supply,),
        label="this is all it gives",
        numbers=(Number("load", total.started, total.unit), Number("ceiling", whole, total.unit)),
        mends=_mends(rig, power, total, limits),
        help="ask its maker for how long it gives more, or add a supply",
    )


def _told(rig: Rig, power: PowerAssignment, total: SupplyTotal, limits: LoadLimits, level: Level) -> Diagnostic:
    supply = rig.supplies[total.supply]
    ceiling = supply.ceiling_w or supply.ceiling_ma
    whole = total.ceiling or 0.0
    most = " at least" if total.unknown else ""
    over = "" if level is Level.ERROR else f", more than {limits.total_pct:g} %"
    return KIND.at(
        ceiling.span if ceiling else supply.declared,
        f"'{total.supply}' gives {whole:g} {total.unit} in all and its units take{most} {total.taken:.4g} {total.unit} "
        f"({percentage(total.known_pct)}{over})",
        subject=(total.supply,),
        label="this is all it gives",
        also=_biggest(rig, power, total),
        numbers=(Number("load", total.taken, total.unit), Number("ceiling", whole, total.unit)),
        mends=_mends(rig, power, total, limits),
        otherwise="no move of a unit to another supply does it: add one",
        level=level,
    )


def _biggest(rig: Rig, power: PowerAssignment, total: SupplyTotal) -> tuple[Label, ...]:
    names = [feed.unit for feed in power.feeds if any(port.thing == total.supply for port in feed.outlets)]
    facts = [fact for name in names if (fact := rig.units[name].draws_ma) is not None]
    most = max(facts, key=lambda fact: fact.value, default=None)
    return () if most is None else (Label(most.span, f"the most: {most.value:g} mA"),)


def _mends(rig: Rig, power: PowerAssignment, total: SupplyTotal, limits: LoadLimits) -> tuple[Mend, ...]:
    """A unit moved to another supply, the smallest first whose move leaves little enough."""
    ceiling = total.ceiling or 0.0
    found: list[Mend] = []
    for name, taken, started in sorted(_shares(rig, power, total), key=lambda each: each[1]):
        left, left_starting = total.taken - taken, total.started - started
        if exceeds(left, limits.total_pct, ceiling) or exceeds(left_starting, 100, ceiling):
            continue
        found += moves(rig, power, name, limits, lambda way: all(port.thing != total.supply for port in way.outlets))[
            :1
        ]
    return tuple(found[:2])


def _shares(rig: Rig, power: PowerAssignment, total: SupplyTotal) -> Iterator[tuple[str, float, float]]:
    """What each unit of known current that stands on this supply alone takes of it, running and at switch-on, in the ceiling's unit."""
    for feed in power.feeds:
        unit = rig.units[feed.unit]
        if unit.draws_ma is not None and all(port.thing == total.supply for port in feed.outlets):
            each_ma = 1.0 if total.unit == "mA" else feed.volts / 1000
            yield feed.unit, drawn_ma(unit) * each_ma, highest_ma(unit) * each_ma


CHECK = overloaded_supply
