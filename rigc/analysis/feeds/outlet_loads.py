"""Supplied units and their taps -> the load of each outlet of every supply in use: `mill5.o2.load`, `.limit`, `.percent`."""

from __future__ import annotations

from rigc.analysis.feeds.outlet_bearing import highest_ma, unknown_start
from rigc.analysis.feeds.power_tap import Tap, limit_of, share_of, tap
from rigc.analysis.feeds.unit_needs import draws, needs_volts
from rigc.diagnostics.figures import plain
from rigc.facts.power import PARALLEL_SHARE
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating, Unit
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import mentioned, ours, stated
from rigc.traced.means import found, percent, taken, total, total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, PRACTICE, STATED
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import MILLIAMPS, SHARE, VOLTS


class OutletLoad(Record):
    """An outlet at its setting: its rating, what may be taken of it (`limit_ma`: less in series or parallel), what is.

    `load` is lacking where a unit's current is not known (those are `unknown`); `known_ma` is the sum of the others.
    `start_ma` counts measured start-up currents in place of running ones. An outlet in parallel bears its share of the
    current, one in series all of it. `joined` names the outlets that work as one with it, itself among them. `share` is
    its load in percent of what may be taken.
    """

    outlet: Port
    units: tuple[str, ...]
    joined: tuple[Port, ...]
    how: str
    setting: Rating
    volts: Figure
    rating_ma: Figure
    limit_ma: Figure
    load: AnyFigure
    share: AnyFigure
    known_ma: Term
    start_ma: float
    unknown: tuple[str, ...]
    digital: bool  # a digital unit of unknown start-up current is on it

    @property
    def load_ma(self) -> Term | None:
        """Its load in mA; None where a unit's current is not known."""
        return known(self.load)

    @property
    def percent(self) -> Term | None:
        """Its load in percent of what may be taken; None where not known or nothing may."""
        return known(self.share)


def outlet_loads(rig: Rig, supplies: tuple[str, ...], taps: dict[str, Tap]) -> dict[Port, OutletLoad]:
    """The load of every outlet of these supplies, in order of declaration."""
    users: dict[Port, list[str]] = {}
    for name, each in taps.items():
        for port in dict.fromkeys(each.outlets):
            users.setdefault(port, []).append(name)
    loads = {}
    for supply in supplies:
        for outlet in rig.supplies[supply].outlets:
            port = Port(supply, outlet.name)
            if outlet.ratings:
                loads[port] = _load(rig, port, outlet, {name: taps[name] for name in users.get(port, ())})
    return loads


def _load(rig: Rig, port: Port, outlet: Outlet, taps: dict[str, Tap]) -> OutletLoad:
    units = [rig.units[name] for name in taps]
    own = next((each.setting(port) for each in taps.values()), outlet.ratings[0])
    joined = max(taps.values(), key=lambda each: len(each.outlets), default=tap(rig, (port,), "", (own,)))
    limit = _limit(port, min(taps.values(), key=lambda each: each.limit_ma * each.share(port), default=joined))
    currents = [borne(port, unit, taps[unit.name]) for unit in units]
    load = figure(
        f"{port}.load",
        total(currents) if units else found(0.0, lambda: "nothing is on it"),
        MILLIAMPS,
        mentioned(str(port), "outlet", outlet.span),
        rule="the currents of all units on it; in parallel each outlet bears its share of the ratings",
        source=ARITHMETIC,
    )
    return OutletLoad(
        port,
        tuple(taps),
        joined.outlets,
        joined.how,
        own,
        _volts(rig, port, outlet, own, units),
        _rating(port, own),
        limit,
        load,
        figure(
            f"{port}.percent", percent(load, limit), SHARE, rule="load / what may be taken × 100", source=ARITHMETIC
        ),
        total_known(currents),
        sum(highest_ma(unit) * taps[unit.name].share(port) for unit in units),
        tuple(unit.name for unit in units if unit.draws_ma is None),
        any(unknown_start(unit) for unit in units),
    )


def _volts(rig: Rig, port: Port, outlet: Outlet, own: Rating, units: list[Unit]) -> Figure:
    ratings = outlet.ratings
    feed = rig.power.feed_at.get(port)
    told = (
        "as it leaves its maker"
        if not units
        else "what suits the units on it"
        if len(ratings) > 1
        else "its only setting"
    )
    asked = None if feed is None else feed.volts
    return known_figure(
        f"{port}.volts",
        taken(
            stated(f"setting of {port}", own.volts),
            lambda: f"{' or '.join(plain(each.volts.value) for each in ratings)} → {plain(own.volts.value)}: {told}",
            *(stated(f"setting of {port}", rating.volts) for rating in ratings if rating is not own),
            *(() if asked is None else (stated("setting stated for the feed", asked),)),
            *(needs_volts(unit) for unit in units if unit.volts is not None and len(ratings) > 1),
        ),
        VOLTS,
        rule="the setting stated (`at 12 V`); else the one that suits all units on the outlet and is nearest to what they "
        "need; else the first, at which it leaves its maker",
        source=PRACTICE,
        label=f"{port} gives",
    )


def _rating(port: Port, setting: Rating) -> Figure:
    value = stated(f"the rating of {port}", setting.milliamps)
    return known_figure(f"{port}.rating", value, MILLIAMPS, rule=AS_STATED, source=STATED)


def _limit(port: Port, each: Tap) -> Figure:
    ratings = tuple(_rating(other, setting) for other, setting in zip(each.outlets, each.settings, strict=True))
    most: Term = limit_of(each.how, ratings, ours(PARALLEL_SHARE))
    return known_figure(
        f"{port}.limit",
        most * share_of(each.how, ratings, each.outlets.index(port)),
        MILLIAMPS,
        rule="what may be taken: the rating; in series the smaller one; in parallel nine tenths of the sum, each its share",
        source=PRACTICE,
        label=f"may be taken of {port}",
    )


def borne(port: Port, unit: Unit, each: Tap) -> Traced:
    """What an outlet bears of a unit's current, in mA."""
    ratings = [_rating(other, setting) for other, setting in zip(each.outlets, each.settings, strict=True)]
    own: Traced = draws(unit) * share_of(each.how, ratings, each.outlets.index(port))
    return own
