"""What an outlet is set to, gives and bears: `mill5.o2.volts`, `.rating`, `.limit`, `.load`, `.percent`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.outlet_loads import OutletLoad
from rigc.analysis.power.power_tap import outlet_at
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, ours, placed, stated
from rigc.analysis.reasons.reason import ARITHMETIC, NOT_KNOWN, Input, Reason
from rigc.diagnostics.figures import plain, share
from rigc.facts.power import PARALLEL_SHARE
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.source import Span


def outlet_load(rig: Rig, power: PowerAssignment) -> Iterator[Reason]:
    """Five reasons for each outlet of every supply in use."""
    for load in power.loads.values():
        yield _volts(rig, load)
        yield as_stated(f"{load.outlet}.rating", f"the rating of {load.outlet}", load.setting.milliamps, "mA")
        yield _limit(power, load)
        yield _load(rig, power, load)
        yield _percent(load)


def _volts(rig: Rig, load: OutletLoad) -> Reason:
    outlet = outlet_at(rig, load.outlet)
    ratings = outlet.ratings if outlet is not None else ()
    feed = next((feed for feed in rig.power.feeds if load.outlet in feed.outlets), None)
    inputs = [stated(f"setting of {load.outlet}", rating.volts) for rating in ratings]
    inputs += _asked(feed.volts if feed is not None else None)
    needs = [(name, rig.units[name].volts) for name in load.units]
    inputs += [stated(f"{name} needs", volts) for name, volts in needs if volts is not None]
    told = (
        "as it leaves its maker"
        if not load.units
        else "what suits the units on it"
        if len(ratings) > 1
        else "its only setting"
    )
    return Reason(
        f"{load.outlet}.volts",
        plain(load.volts),
        "V",
        f"{' or '.join(plain(rating.volts.value) for rating in ratings)} → {plain(load.volts)}: {told}",
        tuple(inputs),
        "the setting stated (`at 12 V`); else the one that suits all units on the outlet and is nearest to what they need; "
        "else the first, at which it leaves its maker",
        "common practice, no source",
    )


def _asked(volts: Quantity | None) -> list[Input]:
    return [] if volts is None else [stated("setting stated for the feed", volts)]


def _limit(power: PowerAssignment, load: OutletLoad) -> Reason:
    rating = derived(f"rating of {load.outlet}", plain(load.rating_ma), "mA", f"{load.outlet}.rating")
    others = tuple(
        derived(f"rating of {port}", plain(power.loads[port].rating_ma), "mA", f"{port}.rating")
        for port in load.joined
        if port != load.outlet
    )
    value, inputs = plain(load.limit_ma), (rating, *others)
    rated = [each.value for each in inputs]
    if load.how == "parallel":
        inputs = (*inputs, ours(PARALLEL_SHARE))
        percent = plain(PARALLEL_SHARE.value)
        formula = (
            f"{percent} % of ({' + '.join(rated)}), its own share of that {rated[0]} / ({' + '.join(rated)}) = {value}"
        )
    else:
        formula = f"the least of {', '.join(rated)} = {value}" if others else f"{value}, its rating"
    rule = (
        "what may be taken: the rating; in series the smaller one; in parallel nine tenths of the sum, each its share"
    )
    return Reason(f"{load.outlet}.limit", value, "mA", formula, inputs, rule, "common practice, no source")


def _load(rig: Rig, power: PowerAssignment, load: OutletLoad) -> Reason:
    name = f"{load.outlet}.load"
    inputs = [derived(f"{unit} draws", *_draws(rig, unit), f"{unit}.draws") for unit in load.units]
    rule = "the currents of all units on it; in parallel each outlet bears its share of the ratings"
    if load.load_ma is None:
        want = ", ".join(load.unknown)
        return Reason(name, NOT_KNOWN, "mA", f"for want of what {want} draws", tuple(inputs), rule, ARITHMETIC)
    value = plain(load.load_ma)
    if not load.units:
        formula = "nothing is on it"
    else:
        formula = f"{' + '.join(_draws(rig, unit)[0] for unit in load.units)}"
        if load.how == "parallel":
            rated = [plain(power.loads[port].rating_ma) for port in load.joined]
            formula = f"({formula}) × {plain(load.rating_ma)} / ({' + '.join(rated)})"
        formula += f" = {value}"
    inputs.append(placed(str(load.outlet), "outlet", _span(rig, load)))
    return Reason(name, value, "mA", formula, tuple(inputs), rule, ARITHMETIC)


def _span(rig: Rig, load: OutletLoad) -> Span | None:
    outlet = outlet_at(rig, load.outlet)
    return None if outlet is None else outlet.span


def _draws(rig: Rig, unit: str) -> tuple[str, str]:
    fact = rig.units[unit].draws_ma
    return NOT_KNOWN if fact is None else plain(fact.value), "mA"


def _percent(load: OutletLoad) -> Reason:
    name, rule = f"{load.outlet}.percent", "load / what may be taken × 100"
    taken = NOT_KNOWN if load.load_ma is None else plain(load.load_ma)
    inputs = (
        derived("load", taken, "mA", f"{load.outlet}.load"),
        derived("may be taken", plain(load.limit_ma), "mA", f"{load.outlet}.limit"),
    )
    if load.percent is None:
        return Reason(name, NOT_KNOWN, "%", "the load is not known, or nothing may be taken", inputs, rule, ARITHMETIC)
    value = share(load.percent)
    return Reason(name, value, "%", f"{taken} / {plain(load.limit_ma)} × 100 = {value}", inputs, rule, ARITHMETIC)


REASONS = outlet_load
