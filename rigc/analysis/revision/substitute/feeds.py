"""A rig in which a unit's outlet is too weak for it -> the ways to feed it otherwise, the least work first."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.checks.ac_on_dc import ac_on_dc
from rigc.analysis.checks.mixed_outlet import mixed_outlet
from rigc.analysis.checks.nearly_full_outlet import nearly_full_outlet
from rigc.analysis.checks.overloaded_outlet import overloaded_outlet
from rigc.analysis.checks.overloaded_supply import overloaded_supply
from rigc.analysis.checks.shared_positive_ground import shared_positive_ground
from rigc.analysis.checks.unfit_parallel_lead import unfit_parallel_lead
from rigc.analysis.checks.unfit_power_plug import unfit_power_plug
from rigc.analysis.checks.wrong_polarity import wrong_polarity
from rigc.analysis.checks.wrong_voltage import wrong_voltage
from rigc.analysis.computations.load_limits import HARD
from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.outlet_bearing import bears
from rigc.analysis.power.outlet_fit import fits, resized
from rigc.analysis.power.power_tap import Tap, outlet_at, tap
from rigc.analysis.results import Results
from rigc.analysis.revision.built.as_it_stood import with_feeds
from rigc.diagnostics.diagnostic import Level
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Feed
from rigc.record import Record

_RULES = (
    ac_on_dc, mixed_outlet, nearly_full_outlet, overloaded_outlet, overloaded_supply,
    shared_positive_ground, unfit_parallel_lead, unfit_power_plug, wrong_polarity, wrong_voltage,
)  # fmt: skip


class FeedWay(Record):
    """A way to feed a unit: what each unit that is concerned then stands on, the unit itself first, and the rig fed so.

    `warnings` is how many more warnings about power the rig then has than without the unit; `shares` how far each of these units loads
    what it stands on, in percent of what may be taken, None where a current is not known.
    """

    taps: tuple[tuple[str, Tap], ...]
    rig: Rig
    warnings: int
    shares: tuple[float | None, ...]

    @property
    def moved(self) -> tuple[tuple[str, Tap], ...]:
        """The other units that move, and where to."""
        return self.taps[1:]


def feed_ways(results: Results, unit: str) -> tuple[FeedWay, ...]:
    """The ways that break no rule of power: to a free outlet, to that of another unit which moves, or with a second outlet in
    parallel. Those that call for no warning come first, of others those with the lowest of their highest loads; then those that
    move the fewest units."""
    rig, power = results.rig, results.get(PowerAssignment)
    errors, warnings = _counted(Results(_unfed(rig, unit)))
    ways = []
    for taps in _candidates(rig, power, unit):
        changed = _fed(rig, taps)
        wrong, doubtful = _counted(Results(changed))
        if wrong <= errors:
            ways.append(FeedWay(taps, changed, doubtful - warnings, _shares(Results(changed), taps)))
    return tuple(sorted(ways, key=_rank))


def _rank(way: FeedWay) -> tuple[bool, float, int]:
    worried = way.warnings > 0
    return worried, max(share or 0.0 for share in way.shares) if worried else 0.0, len(way.taps)


def _shares(results: Results, taps: tuple[tuple[str, Tap], ...]) -> tuple[float | None, ...]:
    loads = results.get(PowerAssignment).loads
    return tuple(loads[each.outlets[0]].percent for _, each in taps)


def _candidates(rig: Rig, power: PowerAssignment, unit: str) -> Iterator[tuple[tuple[str, Tap], ...]]:
    own = power.taps.get(unit)
    mine = own.outlets[0] if own is not None and len(own.outlets) == 1 else None
    free = [port for port, load in power.loads.items() if not load.units and port not in power.reserved]
    for port in free:
        yield from (((unit, each),) for each in _single(rig, unit, port) or _pair(rig, unit, mine, port))
    for other, taken in power.taps.items():
        port = taken.outlets[0]
        if other == unit or len(taken.outlets) > 1 or power.loads[port].units != (other,):
            continue
        for here in _single(rig, unit, port) or _pair(rig, unit, mine, port):
            targets = [*free, mine] if mine is not None and mine not in here.outlets else free
            yield from (((unit, here), (other, there)) for to in targets for there in _single(rig, other, to))


def _single(rig: Rig, unit: str, port: Port) -> list[Tap]:
    """The unit on one outlet, at the first setting that suits."""
    outlet = outlet_at(rig, port)
    taps = [tap(rig, (port,), "", (rating,)) for rating in (outlet.ratings if outlet is not None else ())]
    return [each for each in taps if _suits(rig, unit, each)][:1]


def _pair(rig: Rig, unit: str, mine: Port | None, port: Port) -> list[Tap]:
    """The unit on its outlet and a second one of the same supply, in parallel at one voltage."""
    if mine is None or mine.thing != port.thing or mine == port:
        return []
    one, other = outlet_at(rig, mine), outlet_at(rig, port)
    taps = [
        tap(rig, tuple(sorted((mine, port), key=lambda each: each.jack)), "parallel", (first, second))
        for first in (one.ratings if one is not None else ())
        for second in (other.ratings if other is not None else ())
        if first.volts.value == second.volts.value
    ]
    return [each for each in taps if _suits(rig, unit, each)][:1]


def _suits(rig: Rig, unit: str, each: Tap) -> bool:
    thing = rig.units[unit]
    return fits(thing, each, False, unit in resized(rig)) and bears(each, (thing,), HARD)


def _fed(rig: Rig, taps: tuple[tuple[str, Tap], ...]) -> Rig:
    moved = dict(taps)
    kept = []
    for feed in rig.power.feeds:
        left = tuple(name for name in feed.units if name not in moved)
        if left:
            kept.append(feed.replace(units=left))
    new = [
        Feed(
            (name,),
            each.outlets,
            Fact(each.settings[0].volts.value, f"{each.settings[0].volts.value:g} V", rig.units[name].declared),
            each.how,
            False,
            rig.units[name].declared,
        )
        for name, each in taps
    ]
    return with_feeds(rig, (*kept, *new))


def _unfed(rig: Rig, unit: str) -> Rig:
    """The rig with the unit on no outlet, and none chosen for it."""
    feeds = (feed.replace(units=tuple(name for name in feed.units if name != unit)) for feed in rig.power.feeds)
    left = with_feeds(rig, tuple(feed for feed in feeds if feed.units))
    changed: Rig = left.replace(power=left.power.replace(others=()))
    return changed


def _counted(results: Results) -> tuple[int, int]:
    """Errors and warnings of the rules of power, but for those that only ask for a fact."""
    levels = [finding.level for rule in _RULES for finding in results.call(rule) if not finding.asks_for]
    return levels.count(Level.ERROR), levels.count(Level.WARNING)
