"""A unit and the outlets that are left -> what bars it from the nearest of them: voltage, polarity, plug, ground or current."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.choice.open_outlets import stated_taps
from rigc.analysis.feeds.choice.outlet_problem import OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import common_tenants
from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.outlet_bearing import bears, drawn_ma, highest_ma
from rigc.analysis.feeds.outlet_fit import takes_connector, takes_current, takes_polarity, takes_voltage
from rigc.analysis.feeds.outlet_sharing import positive
from rigc.analysis.feeds.power_tap import Tap, tap
from rigc.analysis.feeds.series_midpoint import midpoints
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.things import Rating, Unit
from rigc.record import Record

_ORDER = ("voltage", "ground", "midpoint", "polarity", "plug", "load")


class Bar(Record):
    """An outlet that a unit can't take, at the setting that is nearest, and `why`: some of voltage, ground, midpoint, polarity, plug, load."""

    way: Tap
    why: tuple[str, ...]


def outlet_bars(rig: Rig, problem: OutletProblem, unit: Unit, limits: LoadLimits) -> tuple[Bar, ...]:
    """Those of the outlets without a tenant with the fewest and slightest obstacles, in order of declaration."""
    bars = list(_bars(rig, problem, unit, limits))
    least = min((_weight(bar) for bar in bars), default=None)
    return tuple(bar for bar in bars if _weight(bar) == least)


def bars_words(rig: Rig, unit: Unit, bars: tuple[Bar, ...]) -> str:
    """As in: its plug is centre-positive and theirs are centre-negative."""
    if not bars:
        return "all of them are taken"
    return ", and ".join(_words(rig, unit, bars, why) for why in bars[0].why)


def of_several(words: str) -> str:
    """What bars one unit by its polarity, said of several."""
    return words.replace("its plug is", "their plugs are", 1).replace("and theirs", "and those of the outlets", 1)


def _bars(rig: Rig, problem: OutletProblem, unit: Unit, limits: LoadLimits) -> Iterator[Bar]:
    turned, sized = unit.name in problem.turned, unit.name in problem.sized
    tenants = common_tenants(problem)
    for site in problem.sites:
        if not site.tenants:
            beside = tenants.get(site.common, ())
            ground = bool(beside) and any(map(positive, (*beside, unit)))
            found = [Bar(way, _why(unit, way, turned, sized, limits, ground)) for way in site.taps]
            nearest = min(found, key=_weight)
            if nearest.why:
                yield nearest
    live = midpoints(rig, stated_taps(rig))
    for port in sorted(live - {site.outlet for site in problem.sites}, key=str):
        outlet = rig.supplies[port.thing].outlet(port.jack)
        taken = any(port in feed.outlets for feed in rig.power.feeds)
        if outlet is not None and outlet.ratings and not taken and port.thing in (rig.power.others or rig.supplies):
            way = tap(rig, (port,), "", (outlet.ratings[0],))
            yield Bar(way, _sorted({"midpoint", *_why(unit, way, turned, sized, limits, False)}))


def _why(unit: Unit, way: Tap, turned: bool, sized: bool, limits: LoadLimits, ground: bool) -> tuple[str, ...]:
    faults = {
        "voltage": not (takes_voltage(unit, way) and takes_current(unit, way)),
        "ground": ground,
        "polarity": takes_polarity(unit, way, turned) is False,
        "plug": not sized and takes_connector(unit, way) is False,
        "load": not bears(way, (unit,), limits),
    }
    return _sorted({name for name, bad in faults.items() if bad})


def _sorted(why: set[str]) -> tuple[str, ...]:
    return tuple(each for each in _ORDER if each in why)


def _weight(bar: Bar) -> int:
    """What costs a new supply weighs more than what costs a lead."""
    heavy = {"voltage": 100, "load": 50, "ground": 20, "midpoint": 20, "polarity": 5, "plug": 3}
    return sum(heavy[each] for each in bar.why)


def _words(rig: Rig, unit: Unit, bars: tuple[Bar, ...], why: str) -> str:
    ways = [bar.way for bar in bars]
    names = listed((str(each.outlets[0]) for each in ways), "and")
    if why == "voltage":
        given = sorted({(rating.volts.value, rating.current) for rating in _settings(rig, ways)})
        return "they give " + " or ".join(f"{volts:g} V {current.upper()}" for volts, current in given)
    if why == "polarity":
        poles = " or ".join(sorted({each.polarity or "?" for each in ways}))
        return f"its plug is {unit.polarity.value if unit.polarity else '?'} and theirs {_are(ways)} {poles}"
    if why == "plug":
        plugs = " or ".join(sorted({str(each.connector) for each in ways}))
        inlet = unit.inlet.connector if unit.inlet is not None else "?"
        return f"its inlet is a {inlet} and they take a {plugs}"
    if why == "ground":
        return f"{names} {'shares' if len(ways) == 1 else 'share'} a return with a unit of positive ground"
    if why == "midpoint":
        return f"the return of {names} is, or may be, the midpoint of a series pair"
    most = max(each.limit_ma for each in ways)
    wants_ma, start = drawn_ma(unit), highest_ma(unit) > drawn_ma(unit)
    volts = f" at {unit.volts.value:g} V" if unit.volts is not None else ""
    need = f"starts with {highest_ma(unit):g} mA" if start else f"draws {wants_ma:g} mA"
    return f"it {need} and the largest outlet left{volts} gives {most:g} mA"


def _settings(rig: Rig, ways: list[Tap]) -> Iterator[Rating]:
    for way in ways:
        outlet = rig.supplies[way.outlets[0].thing].outlet(way.outlets[0].jack)
        yield from outlet.ratings if outlet is not None else way.settings


def _are(ways: list[Tap]) -> str:
    return "is" if len(ways) == 1 else "are"
