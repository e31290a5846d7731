"""Rig -> the stated feeds as taps, and the problem of outlets that the source leaves open."""

from __future__ import annotations

from rigc.analysis.computations.placement import Placement
from rigc.analysis.power.outlet_fit import needs_outlet, window_v
from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.outlet_settings import outlet_settings
from rigc.analysis.power.outlet_sites import outlet_problem, reservations
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.used_units import used_units
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.wishes import Feed


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


def open_problem(rig: Rig, stated: dict[str, Tap], places: Placement) -> OutletProblem:
    """The problem that the source leaves to the choice."""
    known = known_needs(left_open(rig)) if rig.power.others else ()
    return outlet_problem(rig, (*known, *reservations(rig)), stated, places)


def known_needs(units: tuple[Unit, ...]) -> tuple[Unit, ...]:
    """Those that say enough of what they need for an outlet to be chosen."""
    return tuple(unit for unit in units if window_v(unit) is not None and unit.current is not None)


def _joining(feed: Feed) -> str:
    return feed.how if feed.how in ("series", "parallel") else ""
