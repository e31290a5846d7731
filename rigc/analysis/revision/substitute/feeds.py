"""A rig in which a unit's outlet is too weak for it -> the ways to feed it otherwise, the least work first."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.every_check import check
from rigc.analysis.feeds.load_limits import HARD
from rigc.analysis.feeds.outlet_bearing import bears
from rigc.analysis.feeds.outlet_fit import fits, resized
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.power.mends.other_ways import Way, other_ways
from rigc.analysis.results import Results
from rigc.analysis.revision.built.as_it_stood import with_feeds
from rigc.diagnostics.diagnostic import Level
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.model.wishes import Feed
from rigc.record import Record

_RULES = (
    "ac_on_dc", "mixed_outlet", "nearly_full_outlet", "overloaded_outlet", "overloaded_supply",
    "shared_positive_ground", "unfit_parallel_lead", "unfit_power_plug", "wrong_polarity", "wrong_voltage",
)  # fmt: skip


class FeedWay(Record):
    """A way to feed a unit: what each unit that is concerned then stands on, the unit itself first, and the rig fed so.

    `warnings` is how many more warnings about power the rig then has than without the unit; `shares` how far each of these units loads
    what it stands on, in percent of what may be taken, None where a current is not known.
    """

    taps: Way
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


def _shares(results: Results, taps: Way) -> tuple[float | None, ...]:
    loads = results.get(PowerAssignment).loads
    return tuple(loads[each.outlets[0]].percent for _, each in taps)


def _candidates(rig: Rig, power: PowerAssignment, unit: str) -> Iterator[Way]:
    free = tuple(port for port, load in power.loads.items() if not load.units and port not in power.reserved)

    def suits(name: str, each: Tap) -> bool:
        thing = rig.units[name]
        return fits(thing, each, False, name in resized(rig)) and bears(each, (thing,), HARD)

    return other_ways(rig, power, unit, free, suits)


def _fed(rig: Rig, taps: Way) -> Rig:
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
            each.lower,
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
    levels = [finding.level for rule in _RULES for finding in results.call(check(rule)) if not finding.asks_for]
    return levels.count(Level.ERROR), levels.count(Level.WARNING)
