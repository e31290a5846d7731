"""Rig -> which outlet feeds which unit: what the source states is kept, the rest is chosen."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.placement import Placement
from rigc.analysis.power.outlet_choice import OutletChoice, chosen, open_units
from rigc.analysis.power.outlet_fit import needs_outlet, reversing
from rigc.analysis.power.outlet_levels import Levels
from rigc.analysis.power.outlet_loads import OutletLoad, outlet_loads
from rigc.analysis.power.outlet_problem import OutletProblem
from rigc.analysis.power.outlet_settings import outlet_settings
from rigc.analysis.power.outlet_sites import outlet_problem, reservations
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.unfed import Unfed
from rigc.analysis.power.used_units import used_units
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
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

    `objective` is what the chosen feeds come to and `bound` what every choice comes to at least: equal where it is `proved` that
    there is none better. `squeeze` names units that can't all have what the rules of thumb want; `unmeasured` those chosen feeds
    whose lead could not be measured and counts 0.
    """

    feeds: tuple[Supplied, ...]
    loads: dict[Port, OutletLoad]
    unfed: tuple[Unfed, ...]
    taps: dict[str, Tap]
    reserved: dict[Port, str]
    steps: int
    proved: bool = True
    objective: Levels = Levels()
    bound: Levels = Levels()
    squeeze: Unfed | None = None
    unmeasured: tuple[str, ...] = ()

    def of(self, unit: str) -> Supplied | None:
        """Where that unit takes its power; None if nowhere."""
        return next((feed for feed in self.feeds if feed.unit == unit), None)


def power_assignment(rig: Rig, limits: LoadLimits, places: Placement) -> PowerAssignment:
    """The stated feeds, and an outlet for every other unit that is used and needs one."""
    stated = stated_taps(rig)
    choice, unmeasured = _chosen(rig, limits, stated, places)
    taps = {**stated, **choice.taps}
    in_use = {port.thing for each in taps.values() for port in each.outlets} | set(rig.power.others)
    supplies = tuple(name for name in rig.supplies if name in in_use)
    loads = outlet_loads(rig, supplies, taps)
    return PowerAssignment(
        _supplied(rig, taps, loads),
        loads,
        choice.unfed,
        taps,
        choice.reserved,
        choice.steps,
        choice.proved,
        choice.objective,
        choice.bound,
        choice.squeeze,
        unmeasured,
    )


def stated_taps(rig: Rig) -> dict[str, Tap]:
    """What each unit of a stated feed stands on."""
    settings = outlet_settings(rig)
    stated = {}
    for feed in rig.power.feeds:
        if all(port in settings for port in feed.outlets):
            each = tap(rig, feed.outlets, _joining(feed), tuple(settings[port] for port in feed.outlets))
            stated.update(dict.fromkeys(feed.units, each))
    return stated


def left_open(rig: Rig) -> tuple[Unit, ...]:
    """The units that are used, need an outlet, and are in no stated feed."""
    mentioned = {name for feed in rig.power.feeds for name in feed.units}
    return tuple(unit for unit in used_units(rig) if needs_outlet(unit) and unit.name not in mentioned)


def problem_of(rig: Rig, stated: dict[str, Tap], places: Placement) -> OutletProblem:
    """The problem that the source leaves to the choice."""
    known = open_units(left_open(rig)) if rig.power.others else ()
    return outlet_problem(rig, (*known, *reservations(rig)), stated, places)


def _chosen(
    rig: Rig, limits: LoadLimits, stated: dict[str, Tap], places: Placement
) -> tuple[OutletChoice, tuple[str, ...]]:
    units = left_open(rig)
    known = open_units(units)
    unfed = [Unfed("unknown needs", (unit.name,), (), unit.declared) for unit in units if unit not in known]
    names = tuple(unit.name for unit in known)
    problem = problem_of(rig, stated, places)
    if known and not rig.power.others:
        unfed.insert(0, Unfed("no word", names, (), known[0].declared))
    elif known and not problem.sites:
        unfed.append(Unfed("no outlets", names, (), rig.power.others_span or rig.end))
        return OutletChoice(unfed=tuple(unfed)), ()
    if not problem.units:
        return OutletChoice(unfed=tuple(unfed)), ()
    choice = chosen(rig, limits, problem)
    unmeasured = tuple(
        name for name, each in choice.taps.items() if (name, each.outlets[0]) not in problem.lengths_mm
    )
    return choice.replace(unfed=(*unfed, *choice.unfed)), unmeasured


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
