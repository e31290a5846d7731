"""A unit that stands badly -> mends that feed it otherwise, and its outlet's load -> mends that make it less."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import combinations, islice, product

from rigc.analysis.feeds.joined_outlets import both_earthed, shared_common
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_bearing import bears, drawn_ma
from rigc.analysis.feeds.outlet_fit import fits, resized, reversing
from rigc.analysis.feeds.outlet_sharing import mixes, positive
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap, outlet_at, tap
from rigc.analysis.power.joint_loads import JointLoad
from rigc.analysis.power.mends.feed_edits import all_fed_from, fed_from, stated_feed, volts_to_state
from rigc.analysis.power.mends.free_outlets import on_common, unused_outlets
from rigc.analysis.power.mends.other_ways import Way, other_ways
from rigc.diagnostics.mend import Edit, Mend
from rigc.diagnostics.percentage import percentage
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

MOST = 2  # of a kind


def moves(
    rig: Rig,
    power: PowerAssignment,
    unit: str,
    limits: LoadLimits,
    wanted: Callable[[Tap], bool] = lambda _: True,
    join: bool = True,
) -> tuple[Mend, ...]:
    """Onto a free outlet; where none will do, in exchange with another unit or (unless not to `join`) from two outlets. Each outlet
    as it leaves its maker: a switch that must be moved is a warning, see `switched`."""
    kinds: dict[str, list[Way]] = {"free": [], "joined": [], "moved": []}
    for way in _ways(rig, power, unit, limits, wanted):
        if all(_as_made(rig, each) for _, each in way):
            kinds["moved" if len(way) > 1 else "joined" if way[0][1].how else "free"].append(way)
    joined = kinds["joined"] if join and not kinds["free"] else []
    chosen = (*kinds["free"][:MOST], *joined[:1], *kinds["moved"][: MOST - 1])
    return tuple(Mend(_words(rig, way), _edits(rig, way)) for way in chosen[:MOST])


def switched(rig: Rig, power: PowerAssignment, unit: str, limits: LoadLimits) -> str:
    """In words, the first way on which a switch is moved from where its maker left it, which moved-switch warns of; empty where
    there is none."""
    for way in _ways(rig, power, unit, limits, lambda _: True):
        moved = [str(each) for _, each in way if not _as_made(rig, each)]
        if moved and not way[0][1].how:
            switches = f"the switch of {moved[0]}" if len(moved) == 1 else f"the switches of {' and '.join(moved)}"
            return f"{_words(rig, way)}, and tape {switches} over (moved-switch then warns of it)"
    return ""


def _ways(
    rig: Rig, power: PowerAssignment, unit: str, limits: LoadLimits, wanted: Callable[[Tap], bool]
) -> Iterator[Way]:
    turned, sized = reversing(rig), resized(rig)

    def suits(name: str, way: Tap) -> bool:
        thing = rig.units[name]
        good = fits(thing, way, name in turned, name in sized) and bears(way, (thing,), limits)
        return (
            good
            and _good_company(rig, power, thing, way, unit)
            and not _unsound(rig, way)
            and (name != unit or wanted(way))
        )

    own = power.taps[unit]
    freed = [port for port in own.outlets if own.how and power.loads[port].units == (unit,)]
    free = (*freed, *unused_outlets(rig, power))
    yield from other_ways(rig, power, unit, free, suits)
    yield from (((unit, way),) for way in _pairs(rig, own.how, free) if suits(unit, way))


def _as_made(rig: Rig, way: Tap) -> bool:
    """Whether each outlet stands as it leaves its maker."""
    places = zip(way.outlets, way.settings, strict=True)
    return all((outlet := outlet_at(rig, port)) is not None and outlet.ratings[0] == each for port, each in places)


def lighter(
    rig: Rig, power: PowerAssignment, load: JointLoad, limits: LoadLimits, join: bool = True
) -> tuple[Mend, ...]:
    """The unit moved whose move leaves little enough, the smallest first; all units together onto a stronger outlet; of a
    single unit its moves."""
    if len(load.units) == 1:
        return moves(rig, power, load.units[0], limits, join=join)
    way = power.taps[load.units[0]]
    units = sorted((rig.units[name] for name in load.units), key=lambda each: drawn_ma(each))
    single = (
        mend
        for unit in units
        if unit.draws_ma is not None and bears(way, tuple(each for each in units if each is not unit), limits)
        for mend in moves(rig, power, unit.name, limits, join=join)[:1]
    )
    return (*islice(single, MOST), *together(rig, power, load.units, limits))


def together(rig: Rig, power: PowerAssignment, names: tuple[str, ...], limits: LoadLimits) -> tuple[Mend, ...]:
    """All units of a statement, if these are they, onto the first free outlet that suits them, alone on its return."""
    feed = stated_feed(rig, names[0])
    if feed is None or set(feed.units) != set(names) or len(feed.outlets) > 1:
        return ()
    units = tuple(rig.units[name] for name in names)
    turned, sized = reversing(rig), resized(rig)
    for port in unused_outlets(rig, power):
        outlet = outlet_at(rig, port)
        for rating in outlet.ratings if outlet is not None else ():
            way = tap(rig, (port,), "", (rating,))
            good = all(fits(each, way, each.name in turned, each.name in sized) for each in units)
            if good and _as_made(rig, way) and bears(way, units, limits) and not on_common(rig, power, port, units[0]):
                share = percentage(way.percent(sum(drawn_ma(each) for each in units)))
                words = f"feed {listed(names)} from {_place(rig, way)} ({share})"
                return (Mend(words, all_fed_from(rig, feed, way)),)
    return ()


def _pairs(rig: Rig, how: str, free: tuple[Port, ...]) -> Iterator[Tap]:
    """Two isolated outlets of one supply at one voltage, joined as those are that a unit stands on now."""
    for one, other in combinations(free, 2) if how in ("series", "parallel") else ():
        first, second = outlet_at(rig, one), outlet_at(rig, other)
        if first is None or second is None or one.thing != other.thing or first.common or second.common:
            continue
        for rating, again in product(first.ratings, second.ratings):
            if rating.volts.value == again.volts.value:
                yield tap(rig, (one, other), how, (rating, again))


def _good_company(rig: Rig, power: PowerAssignment, unit: Unit, way: Tap, leaving: str) -> bool:
    """Whether the units that stay on the outlets' commons and this one leave each other in peace."""
    there = [each for port in way.outlets for each in on_common(rig, power, port, unit) if each.name != leaving]
    return not there or not (mixes((unit, *there)) or any(positive(each) for each in (*there, unit)))


def _unsound(rig: Rig, way: Tap) -> bool:
    """Whether outlets may not be joined: with one return, or of AC, whose phase is not known."""
    if not way.how:
        return False
    joined = shared_common(rig, way) is not None or both_earthed(rig, way)
    return joined or way.current != "dc"


def _words(rig: Rig, way: Way) -> str:
    (unit, here), *moved = way
    words = f"feed '{unit}' from {_place(rig, here)}{_share(rig.units[unit], here)}"
    if here.how == "parallel":
        words += ", if the supply's maker allows it"
    return words + "".join(f" and '{other}' from {_place(rig, there)}" for other, there in moved)


def _place(rig: Rig, way: Tap) -> str:
    volts = volts_to_state(rig, way)
    return f"{way}" if volts is None else f"{way} at {volts:g} V"


def _share(unit: Unit, way: Tap) -> str:
    return f" ({percentage(way.percent(drawn_ma(unit)))})" if unit.draws_ma is not None else ""


def _edits(rig: Rig, way: Way) -> tuple[Edit, ...]:
    return tuple(edit for name, each in way for edit in fed_from(rig, name, each))
