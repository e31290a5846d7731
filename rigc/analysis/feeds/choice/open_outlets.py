"""Rig -> the stated feeds as taps, and the problem of outlets that the source leaves open: sites, settings, ceilings, pins."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.choice.outlet_problem import RESERVE, Ceiling, OutletProblem, Site
from rigc.analysis.feeds.load_limits import exceeds
from rigc.analysis.feeds.outlet_bearing import drawn_ma
from rigc.analysis.feeds.outlet_fit import needs_outlet, resized, reversing, takes_current, takes_voltage, window_v
from rigc.analysis.feeds.outlet_sharing import chain_neighbours, sharers
from rigc.analysis.feeds.power_tap import Tap, outlet_at, tap
from rigc.analysis.feeds.series_midpoint import midpoints
from rigc.facts.power import FAR_MM
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating, Supply, Unit
from rigc.model.wishes import Feed


def outlet_settings(rig: Rig) -> dict[Port, Rating]:
    """The rating at which each outlet of a stated feed stands.

    It is the one stated (`at 12 V`); else the one that suits all units on the outlet, nearest to what they need; else
    the one at which the outlet leaves its maker. Feeds that name no outlet that exists are passed over.
    """
    found: dict[Port, Rating] = {}
    feeds = sorted(rig.power.feeds, key=lambda feed: feed.volts is None)
    units = _units_on(rig)
    for feed in feeds:
        ports = tuple(port for port in feed.outlets if _rated(rig, port))
        if ports and len(ports) == len(feed.outlets):
            together = tuple({unit.name: unit for port in ports for unit in units[port]}.values())
            best = min(_ways(rig, feed, ports, found), key=lambda way: _unsuited(way, together))
            found.update(zip(ports, best.settings, strict=True))
    return found


def _ways(rig: Rig, feed: Feed, ports: tuple[Port, ...], found: dict[Port, Rating]) -> Iterator[Tap]:
    choices = [(found[port],) if port in found else _settings(rig, feed, port) for port in ports]
    return (tap(rig, ports, feed.how, settings) for settings in product(*choices))


def _settings(rig: Rig, feed: Feed, port: Port) -> tuple[Rating, ...]:
    ratings = _rated(rig, port)
    stated = tuple(each for each in ratings if feed.volts is not None and each.volts.value == feed.volts.value)
    return stated or ratings


def _rated(rig: Rig, port: Port) -> tuple[Rating, ...]:
    outlet = outlet_at(rig, port)
    return () if outlet is None else outlet.ratings


def _units_on(rig: Rig) -> dict[Port, list[Unit]]:
    found: dict[Port, list[Unit]] = {}
    for feed in rig.power.feeds:
        for port in feed.outlets:
            found.setdefault(port, []).extend(rig.units[name] for name in feed.units if name in rig.units)
    return found


def _unsuited(way: Tap, units: tuple[Unit, ...]) -> tuple[int, int, bool, float]:
    wrong_kind = sum(takes_current(unit, way) is False for unit in units)
    wrong_volts = sum(takes_voltage(unit, way) is False for unit in units)
    drawn = sum(unit.draws_ma.value for unit in units if unit.draws_ma is not None)
    away = sum(abs(way.volts - unit.volts.value) for unit in units if unit.volts is not None)
    return wrong_kind, wrong_volts, exceeds(drawn, 100, way.limit_ma), away


def reservations(rig: Rig) -> tuple[Unit, ...]:
    """The outlets that the source reserves, as units that nobody shares with."""
    texts = [text or "a unit to come" for *_, text in rig.power.reserved]
    return tuple(
        Unit(
            "reserve",
            f"{RESERVE}{texts[at]}" + (f" ({texts[: at + 1].count(texts[at])})" if texts.count(texts[at]) > 1 else ""),
            text,
            volts.span,
            volts=volts,
            current=current,
            draws_ma=milliamps,
            starts_ma=Fact(milliamps.value, milliamps.typed, milliamps.span),
        )
        for at, (volts, current, milliamps, text) in enumerate(rig.power.reserved)
    )


def outlet_problem(
    rig: Rig, units: tuple[Unit, ...], stated: dict[str, Tap], places: Placement, before: dict[str, Port]
) -> OutletProblem:
    """The problem of placing these units on the outlets of `others from` (of all supplies where only a reservation asks)."""
    names = tuple(dict.fromkeys(rig.power.others)) or tuple(rig.supplies)
    supplies = [rig.supplies[name] for name in names if name in rig.supplies]
    spare: dict[str, int] = {}
    for count, supply, _ in rig.power.spare:
        spare[supply or ""] = spare.get(supply or "", 0) + count
    sites = tuple(_site(rig, each.name, outlet, stated) for each in supplies for outlet in each.outlets)
    live = midpoints(rig, stated)
    sites = tuple(site for site in sites if site.taps and (site.tenants or site.outlet not in live))
    sites = tuple(site.replace(open=site.open and site.outlet not in live) for site in sites)
    return OutletProblem(
        units,
        sites,
        sharers(rig),
        chain_neighbours(rig),
        reversing(rig),
        resized(rig),
        {name: port for name, port in before.items() if any(site.outlet == port for site in sites)} | _pins(rig),
        _lengths(rig, units, sites, places),
        {each.name: ceiling for each in supplies if (ceiling := _ceiling(rig, each, stated)) is not None},
        spare,
    )


def _site(rig: Rig, supply: str, outlet: Outlet, stated: dict[str, Tap]) -> Site:
    port = Port(supply, outlet.name)
    taken = {name: each for name, each in stated.items() if port in each.outlets}
    taps = tuple(tap(rig, (port,), "", (rating,)) for rating in outlet.ratings)
    first = next(iter(taken.values()), None)
    look = (
        *((each.volts, each.current, each.limit_ma) for each in taps),
        outlet.polarity,
        str(outlet.connector),
    )
    return Site(
        port,
        taps if first is None else (first,),
        look,
        f"{supply}/{outlet.common}" if outlet.common is not None else "",
        tuple(rig.units[name] for name in taken if name in rig.units),
        first is None or not first.how,
    )


def _pins(rig: Rig) -> dict[str, Port]:
    """Where a stated lead comes from that already runs from an outlet to a unit."""
    found = {}
    for lead in rig.lead_wishes.leads:
        for start, end in ((lead.start, lead.end), (lead.end, lead.start)):
            if start.thing in rig.supplies and end.thing in rig.units:
                found[end.thing] = start
    return found


def _lengths(
    rig: Rig, units: tuple[Unit, ...], sites: tuple[Site, ...], places: Placement
) -> dict[tuple[str, Port], int]:
    found = {}
    starts = [(site.outlet, point) for site in sites if (point := places.point(site.outlet)) is not None]
    for unit in units:
        end = places.point(Port(unit.name, unit.inlet.name)) if unit.inlet is not None else None
        if end is not None:
            for outlet, start in starts:
                near = round(abs(start.x_mm - end.x_mm) + abs(start.y_mm - end.y_mm))
                found[unit.name, outlet] = near if start.deck == end.deck else round(FAR_MM.value)
        for site in sites:
            if (site.outlet.thing in rig.off_board) != (unit.name in rig.off_board):
                found[unit.name, site.outlet] = round(FAR_MM.value)
    return found


def _ceiling(rig: Rig, supply: Supply, stated: dict[str, Tap]) -> Ceiling | None:
    ceiling = supply.ceiling_w or supply.ceiling_ma
    if ceiling is None:
        return None
    watts = supply.ceiling_w is not None
    taken = 0.0
    for name, each in stated.items():
        for port, setting in zip(each.outlets, each.settings, strict=True):
            if port.thing == supply.name and name in rig.units:
                taken += drawn_ma(rig.units[name]) * each.share(port) * (setting.volts.value / 1000 if watts else 1.0)
    return Ceiling(watts, ceiling.value, taken)


def stated_taps(rig: Rig) -> dict[str, Tap]:
    """What each unit of a stated feed stands on."""
    settings = outlet_settings(rig)
    stated = {}
    for feed in rig.power.feeds:
        if all(port in settings for port in feed.outlets):
            each = tap(rig, feed.outlets, _joining(feed), tuple(settings[port] for port in feed.outlets))
            stated.update(dict.fromkeys(feed.units, each.replace(lower=feed.lower)))
    return stated


def left_open(rig: Rig) -> tuple[Unit, ...]:
    """The units that are used, need an outlet, and are in no stated feed."""
    mentioned = {name for feed in rig.power.feeds for name in feed.units}
    return tuple(unit for unit in used_units(rig) if needs_outlet(unit) and unit.name not in mentioned)


def open_problem(
    rig: Rig, stated: dict[str, Tap], places: Placement, before: dict[str, Port] | None = None
) -> OutletProblem:
    """The problem that the source leaves to the choice; `before` is where units were fed in the revision before."""
    known = known_needs(left_open(rig)) if rig.power.others else ()
    return outlet_problem(rig, (*known, *reservations(rig)), stated, places, before or {})


def known_needs(units: tuple[Unit, ...]) -> tuple[Unit, ...]:
    """Those that say enough of what they need for an outlet to be chosen."""
    return tuple(unit for unit in units if window_v(unit) is not None and unit.current is not None)


def _joining(feed: Feed) -> str:
    return feed.how if feed.how in ("series", "parallel") else ""
