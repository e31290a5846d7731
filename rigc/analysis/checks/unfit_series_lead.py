"""A series lead joins outlets that it can't add up: they share a common, their voltages differ, or it is loaded too far.

Why it matters: outlets that share a common are not two sources: the series lead shorts one of them. Of unequal outlets the
weaker one is driven beyond its rating, or backwards.
What to do: use two outlets that are isolated from each other and set to one voltage, or one outlet with that voltage; the
limit is the smaller of the two ratings.
Source: physics: a series connection; arithmetic on stated values.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.load_limits import exceeds
from rigc.analysis.computations.power_assignment import PowerAssignment, Supplied
from rigc.analysis.power.outlet_fit import takes_current, takes_voltage
from rigc.analysis.power.pair import equal_volts, pair_names, pair_volts, shared_common
from rigc.analysis.power.power_tap import Tap, outlet_at, tap
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "unfit-series-lead",
    Level.ERROR,
    __doc__,
    "series: isolated from each other, equal voltage, load and start-up current ≤ the smaller rating",
    "physics: a series connection; arithmetic on stated values",
)


def unfit_series_lead(rig: Rig, power: PowerAssignment) -> Iterator[Diagnostic]:
    """One finding for each unit on a series lead that can't be."""
    for feed in power.feeds:
        each = power.taps[feed.unit]
        faults = _faults(rig, feed.unit, each) if each.how == "series" else []
        if faults:
            yield _told(rig, power, feed, each, faults)


def _faults(rig: Rig, unit: str, each: Tap) -> list[str]:
    faults = []
    common, draws = shared_common(rig, each), rig.units[unit].draws_ma
    if common is not None:
        faults.append(f"{pair_names(each)} share the common '{common}'; in series this shorts one of them")
    if not equal_volts(each):
        faults.append(f"{pair_names(each)} stand at {pair_volts(each)}; a series lead wants two equal outlets")
    if draws is not None and exceeds(draws.value, 100, each.limit_ma):
        faults.append(f"'{unit}' wants {draws.value:g} mA and {each} give {each.limit_ma:g} mA, the smaller rating")
    starts = rig.units[unit].starts_ma
    if not faults and starts is not None and exceeds(starts.value, 100, each.limit_ma):
        faults.append(
            f"'{unit}' wants {starts.value:g} mA at switch-on and {each} give {each.limit_ma:g} mA, the smaller rating"
        )
    return faults


def _told(rig: Rig, power: PowerAssignment, feed: Supplied, each: Tap, faults: list[str]) -> Diagnostic:
    draws = rig.units[feed.unit].draws_ma
    places = [(port, outlet) for port in each.outlets if (outlet := outlet_at(rig, port)) is not None]
    numbers = (
        (Number("rating", each.limit_ma, "mA"),)
        if draws is None
        else (
            Number("load", draws.value, "mA"),
            Number("rating", each.limit_ma, "mA"),
        )
    )
    return KIND.at(
        feed.span,
        f"{faults[0]} ('{feed.unit}')" if f"'{feed.unit}'" not in faults[0] else faults[0],
        subject=(feed.unit, *(str(port) for port in each.outlets)),
        label="this series lead",
        also=tuple(Label(outlet.span, f"{port} is declared here") for port, outlet in places[:1]),
        numbers=numbers,
        note="; ".join(faults[1:]),
        help=_way_out(rig, power, feed),
    )


def _way_out(rig: Rig, power: PowerAssignment, feed: Supplied) -> str:
    """One outlet that gives the voltage alone: free, or freed by a unit that moves to one of the pair's outlets."""
    unit = rig.units[feed.unit]
    for way in _alone(rig, unit):
        drawn = 0.0 if unit.draws_ma is None else unit.draws_ma.value
        of = f" ({drawn:g} of {way.limit_ma:g} mA)" if drawn else ""
        port = way.outlets[0]
        users = power.loads[port].units if port in power.loads else ()
        use = f"use '{port}' at {way.volts:g} V{of}"
        if not users:
            return f"{use}, or two isolated outlets"
        freed = _takes(rig, power, feed, users[0]) if len(users) == 1 else None
        if freed is not None:
            return f"{use} and move '{users[0]}' to '{freed}', or use two isolated outlets"
    return "use two outlets of one voltage that are isolated from each other"


def _alone(rig: Rig, unit: Unit) -> list[Tap]:
    """The single outlets, each at one of its settings, that would feed a unit."""
    found = []
    for supply in rig.supplies.values():
        for outlet in supply.outlets:
            ways = (tap(rig, (Port(supply.name, outlet.name),), "", (rating,)) for rating in outlet.ratings)
            found += [way for way in ways if _feeds(way, unit)]
    return found


def _takes(rig: Rig, power: PowerAssignment, feed: Supplied, name: str) -> Port | None:
    """The outlet of the pair that would feed another unit."""
    settings = power.taps[feed.unit].settings
    for port, setting in zip(feed.outlets, settings, strict=True):
        if _feeds(tap(rig, (port,), "", (setting,)), rig.units[name]):
            return port
    return None


def _feeds(way: Tap, unit: Unit) -> bool:
    drawn = 0.0 if unit.draws_ma is None else unit.draws_ma.value
    return bool(takes_voltage(unit, way) and takes_current(unit, way)) and not exceeds(drawn, 100, way.limit_ma)


CHECK = unfit_series_lead
