"""Rig -> which outlet feeds which unit: what the source states is kept, the rest is chosen."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.outlet_choice import chosen
from rigc.analysis.power.outlet_fit import needs_outlet, reversing
from rigc.analysis.power.outlet_loads import OutletLoad, outlet_loads
from rigc.analysis.power.outlet_settings import outlet_settings
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.unfed import Unfed
from rigc.analysis.power.used_units import used_units
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Feed
from rigc.record import Record
from rigc.source import Span


class Supplied(Record):
    """A unit and where it takes its power: `volts` V of kind `current`, `how` `` (alone), `shared`, `series` or `parallel`.

    `reversed`: through a reversing lead. `stated`: the source says so; else it was chosen and `span` is the unit's.
    """

    unit: str
    outlets: tuple[Port, ...]
    volts: float
    current: str
    how: str
    reversed: bool
    stated: bool
    span: Span


class PowerAssignment(Record):
    """Who is fed from where (stated feeds first, then chosen ones, each in the source's order), and who is not and why.

    `taps` tells by unit what it stands on; `loads` has every outlet of every supply in use; `reserved` the outlets that are
    kept for later, with what for; `steps` counts what the choice took.
    """

    feeds: tuple[Supplied, ...]
    loads: dict[Port, OutletLoad]
    unfed: tuple[Unfed, ...]
    taps: dict[str, Tap]
    reserved: dict[Port, str]
    steps: int

    def of(self, unit: str) -> Supplied | None:
        """Where that unit takes its power; None if nowhere."""
        return next((feed for feed in self.feeds if feed.unit == unit), None)


def power_assignment(rig: Rig, limits: LoadLimits) -> PowerAssignment:
    """The stated feeds, and an outlet for every other unit that is used and needs one."""
    settings = outlet_settings(rig)
    stated = {}
    for feed in rig.power.feeds:
        if all(port in settings for port in feed.outlets):
            each = tap(rig, feed.outlets, _joining(feed), tuple(settings[port] for port in feed.outlets))
            stated.update(dict.fromkeys(feed.units, each))
    mentioned = {name for feed in rig.power.feeds for name in feed.units}
    open_units = tuple(unit for unit in used_units(rig) if needs_outlet(unit) and unit.name not in mentioned)
    choice = chosen(rig, limits, open_units, stated)
    taps = {**stated, **choice.taps}
    in_use = {port.thing for each in taps.values() for port in each.outlets} | set(rig.power.others)
    supplies = tuple(name for name in rig.supplies if name in in_use)
    loads = outlet_loads(rig, supplies, taps)
    return PowerAssignment(_supplied(rig, taps, loads), loads, choice.unfed, taps, choice.reserved, choice.steps)


def _joining(feed: Feed) -> str:
    return feed.how if feed.how in ("series", "parallel") else ""


def _supplied(rig: Rig, taps: dict[str, Tap], loads: dict[Port, OutletLoad]) -> tuple[Supplied, ...]:
    spans = {name: feed.span for feed in rig.power.feeds for name in feed.units}
    turned = reversing(rig)
    return tuple(
        Supplied(
            name,
            each.outlets,
            each.volts,
            each.current,
            each.how or ("shared" if any(len(loads[port].units) > 1 for port in each.outlets) else ""),
            name in turned,
            name in spans,
            spans.get(name, rig.units[name].declared),
        )
        for name, each in taps.items()
    )


COMPUTE = power_assignment
