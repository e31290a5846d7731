"""Rig and stated taps -> the problem of choosing: outlets to choose from, ceilings, reservations, pins, lengths."""

from __future__ import annotations

from rigc.analysis.computations.placement import Placement
from rigc.analysis.power.outlet_bearing import drawn_ma
from rigc.analysis.power.outlet_fit import resized, reversing
from rigc.analysis.power.outlet_problem import RESERVE, Ceiling, OutletProblem, Site
from rigc.analysis.power.outlet_sharing import chain_neighbours, sharers
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.series_midpoint import midpoints
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Supply, Unit


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


def outlet_problem(rig: Rig, units: tuple[Unit, ...], stated: dict[str, Tap], places: Placement) -> OutletProblem:
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
        _pins(rig),
        _lengths(units, sites, places),
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


def _lengths(units: tuple[Unit, ...], sites: tuple[Site, ...], places: Placement) -> dict[tuple[str, Port], int]:
    found = {}
    starts = [(site.outlet, point) for site in sites if (point := places.point(site.outlet)) is not None]
    for unit in units:
        end = places.point(Port(unit.name, unit.inlet.name)) if unit.inlet is not None else None
        if end is not None:
            for outlet, start in starts:
                if start.deck == end.deck:
                    found[unit.name, outlet] = round(abs(start.x_mm - end.x_mm) + abs(start.y_mm - end.y_mm))
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
