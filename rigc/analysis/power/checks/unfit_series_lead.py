"""A series lead joins outlets that it can't add up: they share a common or the mains earth, their voltages differ, or it is loaded too far.

Why it matters: outlets that share a common are not two sources: the series lead shorts one of them. Of unequal outlets the
weaker one is driven beyond its rating, or backwards.
What to do: use two outlets that are isolated from each other and set to one voltage, or one outlet with that voltage; the
limit is the smaller of the two ratings.
Source: physics: a series connection; arithmetic on stated values.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.joined_outlets import both_earthed, equal_volts, pair_names, pair_volts, shared_common
from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.feeds.power_tap import Tap, outlet_at
from rigc.analysis.power.mends.other_feeds import moves, switched
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "unfit-series-lead",
    Level.ERROR,
    __doc__,
    "series: isolated from each other, equal voltage, load and start-up current ≤ the smaller rating",
    "physics: a series connection; arithmetic on stated values",
)


def unfit_series_lead(rig: Rig, power: PowerAssignment, limits: LoadLimits) -> Iterator[Diagnostic]:
    """One finding for each unit on a series lead that can't be."""
    for feed in power.feeds:
        each = power.taps[feed.unit]
        faults = _faults(rig, feed.unit, each) if each.how == "series" else []
        if faults:
            yield _told(rig, power, limits, feed, each, faults)


def _faults(rig: Rig, unit: str, each: Tap) -> list[str]:
    faults = []
    common, draws = shared_common(rig, each), rig.units[unit].draws_ma
    if common is not None:
        faults.append(f"{pair_names(each)} share the common '{common}'; in series this shorts one of them")
    elif both_earthed(rig, each):
        faults.append(f"{pair_names(each)} have their minus at the mains earth; in series this shorts one of them")
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


def _told(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, feed: Supplied, each: Tap, faults: list[str]
) -> Diagnostic:
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
        mends=moves(rig, power, feed.unit, limits),
        otherwise=switched(rig, power, feed.unit, limits)
        or "no move or exchange does it: use two outlets of one voltage that are isolated from each other, or a supply that "
        "gives the voltage alone",
    )


CHECK = unfit_series_lead
